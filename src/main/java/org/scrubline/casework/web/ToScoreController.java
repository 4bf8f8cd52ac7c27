package org.scrubline.casework.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The supervisor's home: what waits to be scored, oldest first. */
@Controller
class ToScoreController {

    private final Sheets sheets;
    private final Rubrics rubrics;
    private final TimeLeft timeLeft;
    private final CaseMayDo mayDo;
    private final SheetWords words;

    ToScoreController(Sheets sheets, Rubrics rubrics, TimeLeft timeLeft, CaseMayDo mayDo, SheetWords words) {
        this.mayDo = mayDo;
        this.timeLeft = timeLeft;
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.words = words;
    }

    /** A line of the list; {@code age} is since the end of the case or says that it is a new version, {@code removal} says when the sheet will go. */
    record Line(
            String href,
            String trainee,
            String procedure,
            String note,
            String age,
            String progress,
            String mayDo,
            TimeLeft.Left left,
            @Nullable String removal) {}

    @GetMapping("/to-score")
    String list(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.SUPERVISOR)) {
            throw new NotFound();
        }
        List<Line> lines =
                sheets.toScore(who.personId()).stream().map(this::line).toList();
        model.addAttribute("lines", lines);
        return "casework/to-score";
    }

    private Line line(OpenSheet open) {
        return new Line(
                "/sheets/" + open.sheetId(),
                words.shortName(open.traineeName()),
                rubrics.current(open.surgicalCase().procedureCode()).rubric().title(),
                words.say(
                        running(open) ? "to-score.note.running" : "to-score.note",
                        open.surgicalCase().reference(),
                        words.say("sheet.eye." + open.surgicalCase().eye().name()),
                        words.endOf(open.surgicalCase())),
                age(open),
                words.say("to-score.progress", open.stepsSaid(), open.stepsInAll()),
                mayDo.of(open),
                timeLeft.of(open),
                removal(open));
    }

    private String age(OpenSheet open) {
        if (open.versionNo() > 1) {
            return words.say("to-score.version", open.versionNo());
        }
        return running(open) ? words.say("to-score.running") : words.age(open.age());
    }

    private static boolean running(OpenSheet open) {
        return open.surgicalCase().endedAt() == null;
    }

    private @Nullable String removal(OpenSheet open) {
        return open.removedOn() == null
                ? null
                : words.say(
                        "to-score.removal",
                        words.day(open.touchedAt(), open.surgicalCase()),
                        words.day(open.removedOn(), open.surgicalCase()));
    }
}
