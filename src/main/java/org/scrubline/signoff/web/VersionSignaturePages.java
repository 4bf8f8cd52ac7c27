package org.scrubline.signoff.web;

import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningStatements;
import org.scrubline.signoff.VersionSignature;
import org.scrubline.signoff.VersionSignatureContent;
import org.scrubline.signoff.VersionSigning;
import org.springframework.stereotype.Component;

/** Makes the part of a record's page that says who signed what about it, from what was signed. */
@Component
class VersionSignaturePages {

    private final VersionSigning signing;
    private final SigningStatements statements;
    private final People people;
    private final RecordWords words;

    VersionSignaturePages(VersionSigning signing, SigningStatements statements, People people, RecordWords words) {
        this.signing = signing;
        this.statements = statements;
        this.people = people;
        this.words = words;
    }

    VersionSignaturesView of(SignedIn reader, SignedSheet version) {
        Set<RecordEvent> may = signing.mayFollow(reader, version);
        return new VersionSignaturesView(
                "/signed/" + version.id(),
                version.contentHash(),
                SignedContent.read(version.content()).countersign().stream()
                        .map(reason -> words.say("signoff.countersign.reason." + reason))
                        .toList(),
                version.marks().awaitingCountersignature(),
                signing.of(reader, version.id()).stream().map(this::signature).toList(),
                may.contains(RecordEvent.COUNTERSIGNED),
                may.contains(RecordEvent.ACKNOWLEDGED),
                may.contains(RecordEvent.NOT_ACKNOWLEDGED),
                statements.accepted(reader.personId()));
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
