package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedLine;
import org.scrubline.signoff.SignedRecords;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** What a supervisor signed, and what was signed about a trainee. */
@Controller
class SignedListController {

    private final SignedRecords records;
    private final RecordWords words;
    private final MarkWords marks;

    SignedListController(SignedRecords records, RecordWords words, MarkWords marks) {
        this.records = records;
        this.words = words;
        this.marks = marks;
    }

    /** A line: the other person, the procedure, the case and the verdict; {@code late} may be null, {@code marks} empty. */
    record ListLine(
            String href,
            String person,
            String procedure,
            String note,
            String verdict,
            @Nullable String late,
            List<String> marks) {}

    /** Their own list for a supervisor; somebody who is only a trainee is led to theirs. */
    @GetMapping("/signed")
    String signed(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.SUPERVISOR)) {
            return "redirect:/feedback";
        }
        List<SignedLine> lines = records.signedBy(who.personId());
        model.addAttribute(
                "lines",
                lines.stream().map(line -> line(line, line.traineeName())).toList());
        model.addAttribute(
                "voids",
                records.voidSignedBy(who.personId()).stream()
                        .map(line -> line(line, line.traineeName()))
                        .toList());
        return "signoff/signed-list";
    }

    @GetMapping("/feedback")
    String feedback(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        List<SignedLine> lines = records.about(who.personId());
        model.addAttribute(
                "lines",
                lines.stream().map(line -> line(line, line.signerName())).toList());
        model.addAttribute(
                "voids",
                records.voidAbout(who.personId()).stream()
                        .map(line -> line(line, line.signerName()))
                        .toList());
        return "signoff/feedback-list";
    }

    private ListLine line(SignedLine line, String person) {
        return new ListLine(
                "/signed/" + line.id(),
                person,
                line.procedure(),
                words.say(
                        "signoff.list.note",
                        line.reference(),
                        words.at(line.caseEndedAt(), line.zone()),
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
