package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.change.RubricDraft;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.change.RubricReleases;
import org.scrubline.rubric.change.RubricReviews;
import org.scrubline.rubric.survey.ExpertRound;
import org.scrubline.rubric.survey.ExpertRounds;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/**
 * Publishes the programme's rubrics: the first versions at the beginning, each later one by draft, expert round, review
 * and first day.
 */
@Component
@Profile("demo")
class DemoRubricHistory {

    private static final int DRAFTED_DAYS_BEFORE = 60;
    private static final int ASKED_UNTIL_DAYS_BEFORE = 30;
    private static final int REVIEWED_DAYS_BEFORE = 14;
    private static final int PUBLISHED_DAYS_BEFORE = 7;
    private static final List<String> EXPERTS = List.of("S01", "S02", "S03", "S04");
    private static final String REVIEWER = "S01";

    /** One expert finds this step less telling than the others do. */
    private static final String DOUBTED = "TF02";

    private final Rubrics rubrics;
    private final RubricDrafts drafts;
    private final RubricReviews reviews;
    private final RubricReleases releases;
    private final ExpertRounds rounds;
    private final DemoRubrics versions;

    DemoRubricHistory(
            Rubrics rubrics,
            RubricDrafts drafts,
            RubricReviews reviews,
            RubricReleases releases,
            ExpertRounds rounds,
            RubricLibrary library) {
        this.rubrics = rubrics;
        this.drafts = drafts;
        this.reviews = reviews;
        this.releases = releases;
        this.rounds = rounds;
        this.versions = new DemoRubrics(library);
    }

    DemoRubrics versions() {
        return versions;
    }

    /** The first versions now, the later ones in time. */
    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        UUID publisher = cast.member("ormandine").personId();
        versions.unchanged()
                .forEach(rubric -> rubrics.publish(rubric, publisher).orThrow());
        DemoRubrics.Version first = versions.versions().get(0);
        timeline.at(
                start(plan.month(first.firstMonth())),
                () -> rubrics.publish(first.rubric(), publisher).orThrow());
        versions.versions().stream()
                .skip(1)
                .forEach(version -> change(cast, version.rubric(), plan.month(version.firstMonth()), timeline));
    }

    private void change(Cast cast, Rubric next, LocalDate firstDay, Timeline timeline) {
        LocalDate closing = firstDay.minusDays(ASKED_UNTIL_DAYS_BEFORE);
        timeline.at(start(firstDay.minusDays(DRAFTED_DAYS_BEFORE)), () -> draft(cast, next));
        timeline.at(
                start(firstDay.minusDays(DRAFTED_DAYS_BEFORE)).plus(Duration.ofHours(9)),
                () -> ask(cast, next, closing, timeline));
        timeline.at(start(firstDay.minusDays(REVIEWED_DAYS_BEFORE)), () -> review(cast, next));
        timeline.at(start(firstDay.minusDays(PUBLISHED_DAYS_BEFORE)), () -> publish(cast, next, firstDay));
    }

    private void draft(Cast cast, Rubric next) {
        RubricDraft begun = drafts.begin(cast.director(), next.procedure());
        drafts.save(cast.director(), next.procedure(), begun.lockNo(), RubricDraft.text(next))
                .orThrow();
    }

    private void ask(Cast cast, Rubric next, LocalDate closing, Timeline timeline) {
        Set<UUID> experts =
                EXPERTS.stream().map(cast::supervisor).map(SignedIn::personId).collect(Collectors.toSet());
        ExpertRound round =
                rounds.open(cast.director(), next, closing.toString(), experts).orThrow();
        for (int i = 0; i < EXPERTS.size(); i++) {
            int at = i;
            SignedIn expert = cast.supervisor(EXPERTS.get(i));
            timeline.at(
                    round.openedAt().plus(Duration.ofDays(3L * (i + 1))),
                    () -> rounds.answer(expert, round.id(), answer(next, at)).orThrow());
        }
    }

    private static Map<String, String> answer(Rubric rubric, int expert) {
        Map<String, String> typed = new HashMap<>();
        List<Step> steps = rubric.steps();
        for (int i = 0; i < steps.size(); i++) {
            typed.put(ExpertRounds.RELEVANCE + steps.get(i).code(), (i + expert) % EXPERTS.size() == 0 ? "3" : "4");
        }
        if (expert == 0) {
            typed.put(ExpertRounds.RELEVANCE + DOUBTED, "2");
            typed.put(ExpertRounds.REMARK + DOUBTED, "Rarely told apart from the step before it.");
        }
        return typed;
    }

    private void review(Cast cast, Rubric next) {
        SignedIn reviewer = cast.supervisor(REVIEWER);
        String hash = drafts.open(reviewer, next.procedure()).orElseThrow().hash();
        reviews.review(reviewer, next.procedure(), hash, "agree", "Read against five of my last forms; it fits.")
                .orThrow();
    }

    private void publish(Cast cast, Rubric next, LocalDate firstDay) {
        String hash =
                drafts.open(cast.director(), next.procedure()).orElseThrow().hash();
        releases.publish(
                        cast.director(),
                        next.procedure(),
                        hash,
                        firstDay.toString(),
                        "Agreed by the supervisors after the expert round.")
                .orThrow();
    }

    private static Instant start(LocalDate day) {
        return day.atStartOfDay(DemoCast.ZONE).toInstant();
    }
}
