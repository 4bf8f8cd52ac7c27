package org.scrubline.progress.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.StepScore;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** Lists the signed sheets behind a step, newest case first. */
@Component
class StepPages {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);

    private final Wording wording;

    StepPages(Wording wording) {
        this.wording = wording;
    }

    StepPage page(Person trainee, ProcedureProgress progress, StepProgress step) {
        List<StepPage.Line> lines =
                new ArrayList<>(step.scores().stream().map(StepPages::line).toList());
        Collections.reverse(lines);
        return new StepPage(
                trainee.printedName(),
                Links.trainee(trainee.id()) + "?procedure=" + progress.rubric().procedure(),
                progress.rubric().title(),
                wording.text(
                        "progress.step.name", step.step().code(), step.step().name()),
                step.step().sees(),
                List.of(
                        fact("progress.count.scored", step.scored()),
                        fact("progress.count.high", step.high()),
                        fact("progress.count.by-supervisor", step.bySupervisor()),
                        fact("progress.count.not-part", step.notPart()),
                        fact("progress.count.not-seen", step.notSeen())),
                lines);
    }

    private ProgressPage.Fact fact(String key, int count) {
        return new ProgressPage.Fact(Integer.toString(count), wording.text(key, count));
    }

    private static StepPage.Line line(StepScore score) {
        SignedSheet sheet = score.sheet();
        Integer level = score.level().isPresent() ? score.level().getAsInt() : null;
        return new StepPage.Line(
                "/signed/" + sheet.id(),
                MOMENT.format(sheet.caseEndedAt().atZone(sheet.signedZone())),
                sheet.signerName(),
                sheet.band().name(),
                level,
                state(score),
                sheet.late(),
                sheet.marks().contested(),
                sheet.marks().awaitingCountersignature());
    }

    private static @Nullable String state(StepScore score) {
        return score.state()
                .<@Nullable String>fold(
                        level -> null,
                        cause -> "progress.state.by-supervisor." + cause,
                        () -> "progress.state.not-part",
                        () -> "progress.state.not-seen",
                        () -> {
                            throw new IllegalStateException("a signed sheet has no blank step");
                        });
    }
}
