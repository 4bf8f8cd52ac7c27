package org.scrubline.signoff.web;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningStatements;
import org.scrubline.signoff.VersionSignature;
import org.scrubline.signoff.VersionSignatureContent;
import org.scrubline.signoff.VersionSigning;
import org.scrubline.signoff.web.VersionSignaturesView.Act;
import org.springframework.stereotype.Component;

/** Makes the part of a record's page that says who signed what about it, from what was signed. */
@Component
class VersionSignaturePages {

    /** The message key of each button. */
    private static final Map<RecordEvent, String> LABELS = new EnumMap<>(Map.of(
            RecordEvent.COUNTERSIGNED,
            "signoff.countersign",
            RecordEvent.COUNTERSIGN_REFUSED,
            "signoff.countersign.refuse",
            RecordEvent.ACKNOWLEDGED,
            "signoff.acknowledge",
            RecordEvent.NOT_ACKNOWLEDGED,
            "signoff.acknowledge.decline"));

    private final VersionSigning signing;
    private final SigningStatements statements;
    private final People people;
    private final RecordWords words;
    private final Passkeys passkeys;

    VersionSignaturePages(
            VersionSigning signing, SigningStatements statements, People people, RecordWords words, Passkeys passkeys) {
        this.passkeys = passkeys;
        this.signing = signing;
        this.statements = statements;
        this.people = people;
        this.words = words;
    }

    VersionSignaturesView of(SignedIn reader, SignedSheet version) {
        Set<RecordEvent> may = signing.mayFollow(reader, version);
        return new VersionSignaturesView(
                "/signed/" + version.id(),
                version.id(),
                version.contentHash(),
                SignedContent.read(version.content()).countersign().stream()
                        .map(reason -> words.say("signoff.countersign.reason." + reason))
                        .toList(),
                version.marks().awaitingCountersignature(),
                signing.of(reader, version.id()).stream().map(this::signature).toList(),
                may.contains(RecordEvent.COUNTERSIGNED),
                may.contains(RecordEvent.ACKNOWLEDGED),
                may.contains(RecordEvent.NOT_ACKNOWLEDGED),
                acts(may),
                may.isEmpty() ? null : passkeys.askLater(reader.accountId()).orElse(null),
                statements.accepted(reader.personId()));
    }

    private List<Act> acts(Set<RecordEvent> may) {
        return LABELS.entrySet().stream()
                .filter(label -> may.contains(label.getKey()))
                .map(label -> new Act(label.getKey().name(), words.say(label.getValue())))
                .toList();
    }

    private VersionSignaturesView.Signature signature(VersionSignature signature) {
        return new VersionSignaturesView.Signature(
                signature.signerName(),
                nameNow(signature),
                words.say("role." + signature.signerRole()),
                words.at(signature.signedAt(), signature.signedZone()),
                VersionSignatureContent.read(signature.content()).signer().meaning(),
                signature.words().isEmpty() ? null : signature.words(),
                signature.contentHash());
    }

    private @Nullable String nameNow(VersionSignature signature) {
        String now =
                people.person(signature.signerId()).map(Person::printedName).orElse(signature.signerName());
        return Objects.equals(now, signature.signerName()) ? null : now;
    }
}
