package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.reference.ReferenceCase;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ReferenceDraft;
import org.scrubline.demo.plan.ClipDraw;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.demo.plan.PlannedClip;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** The director adds recorded operations in two months, and all supervisors score each before the month ends. */
@Component
@Profile("demo")
class DemoClips {

    private static final Duration NOON = Duration.ofHours(12);
    private static final Duration EVENING = Duration.ofHours(18);
    private static final int ADDED_DAY = 3;
    private static final int FIRST_SCORED_DAY = 6;
    private static final int MINUTES_A_FILM = 12;

    private final ReferenceCases references;

    DemoClips(ReferenceCases references) {
        this.references = references;
    }

    void plan(Cast cast, DemoPlan plan, DemoRubrics rubrics, Timeline timeline) {
        List<PlannedClip> clips = ClipDraw.draw(plan.seed(), rubrics);
        for (int n = 0; n < clips.size(); n++) {
            PlannedClip clip = clips.get(n);
            int place = n;
            timeline.at(
                    at(plan.month(clip.month()).plusDays(ADDED_DAY), NOON),
                    () -> add(cast, plan, clip, rubrics.of(Procedures.TRAB_FORNIX, clip.month()), place, timeline));
        }
    }

    private void add(Cast cast, DemoPlan plan, PlannedClip clip, Rubric rubric, int place, Timeline timeline) {
        LocalDate last = plan.month(clip.month() + 1).minusDays(1);
        ReferenceCase reference = references
                .add(
                        cast.director(),
                        cast.programme().id(),
                        new ReferenceDraft(
                                clip.reference(),
                                clip.title(),
                                Procedures.TRAB_FORNIX,
                                clip.band().name(),
                                "Teaching drive of Sankt Orlin, folder of reference films.",
                                last.toString()))
                .orThrow();
        int day = FIRST_SCORED_DAY;
        for (String scorer : clip.scores().keySet()) {
            Instant then = at(plan.month(clip.month()).plusDays(day++), EVENING)
                    .plus(Duration.ofMinutes((long) place * MINUTES_A_FILM));
            timeline.at(then, () -> score(cast, reference.id(), rubric, clip, scorer));
        }
    }

    private void score(Cast cast, UUID reference, Rubric rubric, PlannedClip clip, String scorer) {
        Map<String, String> answers = new HashMap<>();
        rubric.steps().forEach(step -> answers.put(step.code(), ReferenceCases.NOT_SEEN));
        clip.scores().getOrDefault(scorer, Map.of()).forEach((step, level) -> answers.put(step, level.toString()));
        references.score(cast.supervisor(scorer), reference, answers).orThrow();
    }

    private static Instant at(LocalDate day, Duration hour) {
        return day.atStartOfDay(DemoCast.ZONE).plus(hour).toInstant();
    }
}
