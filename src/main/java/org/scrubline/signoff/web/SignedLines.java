package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.signoff.SignedLine;
import org.springframework.stereotype.Component;

/** Puts lists of signed records into words. */
@Component
class SignedLines {

    private final RecordWords words;
    private final MarkWords marks;

    SignedLines(RecordWords words, MarkWords marks) {
        this.words = words;
        this.marks = marks;
    }

    /**
     * A line.
     *
     * @param person the other person
     * @param signature who signed, in which role, with which meaning, when
     * @param late null unless it is a late entry
     * @param marks what stands beside it: a later version, contested, awaiting a countersignature; may be empty
     */
    record ListLine(
            String href,
            String person,
            String procedure,
            String note,
            String signature,
            String verdict,
            @Nullable String late,
            List<String> marks) {}

    /** Named by the trainee, for whoever scored or countersigns. */
    List<ListLine> of(List<SignedLine> lines) {
        return lines.stream().map(line -> line(line, line.traineeName())).toList();
    }

    /** Named by the scorer, for the trainee. */
    List<ListLine> about(List<SignedLine> lines) {
        return lines.stream().map(line -> line(line, line.signerName())).toList();
    }

    private ListLine line(SignedLine line, String person) {
        return new ListLine(
                "/signed/" + line.id(),
                person,
                line.procedure(),
                words.say("signoff.list.note", line.reference(), words.at(line.caseEndedAt(), line.zone())),
                words.say(
                        "signoff.list.signature",
                        words.say(line.meaning()),
                        line.signerName(),
                        words.say("role." + line.signerRole()),
                        words.at(line.signedAt(), line.zone())),
                words.say(line.verdict().messageKey()),
                line.late() ? words.say("signoff.list.late") : null,
                marks(line));
    }

    private List<String> marks(SignedLine line) {
        List<String> said = new ArrayList<>();
        if (line.versionNo() > 1) {
            said.add(words.say("signoff.list.version", line.versionNo()));
        }
        said.addAll(marks.of(line.marks()));
        return said;
    }
}
