package org.scrubline.signoff.web;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SelfScores;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.Remark;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** Makes the page of a signed record from what was signed, never from the draft. */
@Component
class SignedPages {

    private final RecordPages pages;
    private final RecordWords words;
    private final SignedRecords records;
    private final Rubrics rubrics;
    private final SelfScores selfScores;
    private final Assertions assertions;
    private final People people;

    SignedPages(
            RecordPages pages,
            RecordWords words,
            SignedRecords records,
            Rubrics rubrics,
            SelfScores selfScores,
            Assertions assertions,
            People people) {
        this.pages = pages;
        this.words = words;
        this.records = records;
        this.rubrics = rubrics;
        this.selfScores = selfScores;
        this.assertions = assertions;
        this.people = people;
    }

    SignedPage of(SignedIn reader, SignedSheet signed) {
        SignedContent content = SignedContent.read(signed.content());
        Rubric rubric = rubrics.byId(signed.rubricVersionId())
                .orElseThrow(NotFound::new)
                .rubric();
        Map<String, Integer> self = selfScores.of(signed.caseId(), signed.traineeId());
        UUID who = reader.personId();
        return new SignedPage(
                "/signed/" + signed.id(),
                who.equals(signed.traineeId()) ? "feedback" : who.equals(signed.signerId()) ? "signed" : "",
                pages.of(content.reviewed(), rubric, self),
                signature(signed, content),
                note(signed),
                credential(signed, content),
                signed.versionNo(),
                signed.contentHash(),
                content.reviewedHash(),
                records.remarks(signed.sheetId()).stream()
                        .map(remark -> remark(signed, remark))
                        .toList(),
                who.equals(signed.traineeId()));
    }

    private SignedPage.Signature signature(SignedSheet signed, SignedContent content) {
        return new SignedPage.Signature(
                signed.signerName(),
                words.say("role." + signed.signerRole()),
                words.at(signed.signedAt(), signed.signedZone()),
                content.reviewed().signer().meaning());
    }

    private @Nullable String note(SignedSheet signed) {
        List<String> notes = new ArrayList<>();
        if (signed.late()) {
            notes.add(late(signed));
        }
        if (signed.marks().awaitingCountersignature()) {
            notes.add(words.say("signoff.list.awaiting"));
        }
        people.person(signed.signerId())
                .map(Person::printedName)
                .filter(now -> !now.equals(signed.signerName()))
                .ifPresent(now -> notes.add(words.say("signoff.name.now", now)));
        return notes.isEmpty() ? null : String.join("; ", notes);
    }

    private String late(SignedSheet signed) {
        return words.say(
                "signoff.late",
                Duration.between(signed.caseEndedAt(), signed.signedAt()).toDays());
    }

    /** A passkey's signature is verified anew each time the record is read. */
    private @Nullable String credential(SignedSheet signed, SignedContent content) {
        CredentialUsed used = content.credential();
        Optional<CredentialCheck.Fault> fault = CredentialCheck.fault(
                new CredentialClaim(content.credentialHash(), used),
                assertions.of(LeafKind.SIGNATURE, signed.id()).orElse(null));
        if (fault.isPresent()) {
            return words.say("signoff.credential.fault");
        }
        return used == null
                ? null
                : words.say("signoff.credential." + used.kind().name() + (content.device() == null ? "" : ".table"));
    }

    private SignedPage.RemarkView remark(SignedSheet signed, Remark remark) {
        return new SignedPage.RemarkView(
                remark.authorName(),
                words.at(remark.writtenAt(), signed.signedZone()),
                List.of(remark.body().split("\n+")));
    }
}
