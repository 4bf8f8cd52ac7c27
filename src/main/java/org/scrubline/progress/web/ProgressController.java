package org.scrubline.progress.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SelfScores;
import org.scrubline.entitlement.EntitlementWords;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.progress.Curves;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.Progress;
import org.scrubline.progress.SelfComparison;
import org.scrubline.progress.TraineeProgress;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** One trainee's numbers, and the signed sheets behind each. */
@Controller
class ProgressController {

    private final Progress progress;
    private final Curves curves;
    private final ProgressPages pages;
    private final CurveViews curveViews;
    private final StepPages stepPages;
    private final ProgressSeen seen;
    private final EntitlementWords mayDo;
    private final SelfScores selfScores;
    private final SelfScoreViews selfScoreViews;

    ProgressController(
            Progress progress,
            Curves curves,
            ProgressPages pages,
            CurveViews curveViews,
            StepPages stepPages,
            ProgressSeen seen,
            EntitlementWords mayDo,
            SelfScores selfScores,
            SelfScoreViews selfScoreViews) {
        this.mayDo = mayDo;
        this.selfScores = selfScores;
        this.selfScoreViews = selfScoreViews;
        this.progress = progress;
        this.curves = curves;
        this.pages = pages;
        this.curveViews = curveViews;
        this.stepPages = stepPages;
        this.seen = seen;
    }

    @GetMapping("/progress")
    String own(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable String procedure,
            @RequestParam @Nullable String step,
            Model model) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        return page(who, who.personId(), procedure, step, model);
    }

    @GetMapping("/progress/{traineeId}")
    String ofTrainee(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID traineeId,
            @RequestParam @Nullable String procedure,
            @RequestParam @Nullable String step,
            Model model) {
        return page(who, traineeId, procedure, step, model);
    }

    @GetMapping("/progress/{traineeId}/steps/{stepCode}")
    String step(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID traineeId,
            @PathVariable String stepCode,
            @RequestParam @Nullable String procedure,
            Model model) {
        TraineeProgress read = progress.read(who, traineeId);
        ProcedureProgress chosen = chosen(read, procedure);
        seen.by(who, read);
        model.addAttribute("own", read.trainee().id().equals(who.personId()));
        model.addAttribute(
                "page",
                stepPages.page(read.trainee(), chosen, chosen.step(stepCode).orElseThrow(NotFound::new)));
        return "progress/step";
    }

    private String page(SignedIn who, UUID traineeId, @Nullable String procedure, @Nullable String step, Model model) {
        TraineeProgress read = progress.read(who, traineeId);
        boolean own = read.trainee().id().equals(who.personId());
        seen.by(who, read);
        model.addAttribute("own", own);
        model.addAttribute("trainee", read.trainee());
        model.addAttribute("mayDo", mayDo.of(seen.programmes(who, traineeId), traineeId));
        if (read.procedures().isEmpty()) {
            return "progress/nothing-yet";
        }
        ProcedureProgress chosen = chosen(read, procedure);
        model.addAttribute("page", pages.page(read, chosen, step));
        model.addAttribute("curve", curveViews.of(curves.of(traineeId, chosen), chosen));
        if (own) {
            model.addAttribute(
                    "self", selfScoreViews.of(SelfComparison.of(chosen.evidence(), selfScores.ofTrainee(traineeId))));
        }
        return "progress/trainee";
    }

    /** The procedure asked for; without one, the one with the most cases. */
    private static ProcedureProgress chosen(TraineeProgress read, @Nullable String procedure) {
        if (procedure != null && !procedure.isEmpty()) {
            return read.procedure(procedure).orElseThrow(NotFound::new);
        }
        return read.mostPractised().orElseThrow(NotFound::new);
    }
}
