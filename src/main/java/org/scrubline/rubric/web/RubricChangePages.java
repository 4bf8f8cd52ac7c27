package org.scrubline.rubric.web;

import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.change.RubricChange;
import org.scrubline.rubric.change.RubricComparison;
import org.scrubline.rubric.change.RubricDraft;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.change.RubricEffect;
import org.scrubline.rubric.change.RubricPeople;
import org.scrubline.rubric.change.RubricReleases;
import org.scrubline.rubric.change.RubricReview;
import org.scrubline.rubric.change.RubricReviews;
import org.scrubline.rubric.format.RubricFault;
import org.scrubline.rubric.format.RubricReading;
import org.springframework.stereotype.Component;

/** Puts the pages about a change together. */
@Component
class RubricChangePages {

    private static final int MOST_FAULTS = 100;

    private final RubricDrafts drafts;
    private final RubricReviews reviews;
    private final RubricReleases releases;
    private final Rubrics rubrics;
    private final RubricPeople people;
    private final Wording wording;
    private final Clock clock;

    RubricChangePages(
            RubricDrafts drafts,
            RubricReviews reviews,
            RubricReleases releases,
            Rubrics rubrics,
            RubricPeople people,
            Wording wording,
            Clock clock) {
        this.drafts = drafts;
        this.reviews = reviews;
        this.releases = releases;
        this.rubrics = rubrics;
        this.people = people;
        this.wording = wording;
        this.clock = clock;
    }

    /**
     * The page of a draft.
     *
     * @param draft null when none is open
     * @param faults the first hundred, as sentences; {@code more} says how many there are beside them
     * @param zone where the director's days begin, null for others
     * @param taking whether new cases can be logged
     */
    record DraftPage(
            String procedure,
            String title,
            String version,
            String href,
            boolean directs,
            @Nullable RubricDraft draft,
            String savedAt,
            List<String> faults,
            int more,
            @Nullable String zone,
            boolean taking,
            List<String> effects) {}

    /** One answer as shown; {@code current} when it is about the text as it stands. */
    record ReviewLine(String name, String at, boolean agrees, boolean current, String words) {}

    /**
     * The page of what a draft changes.
     *
     * @param faulty whether the text has faults, so that nothing can be compared
     * @param changes sentences; {@code doubts} those that warn
     * @param mayReview whether the reader did not write it
     * @param agreed whether it can be published
     */
    record ChangesPage(
            String procedure,
            String title,
            String version,
            String next,
            String hash,
            boolean faulty,
            List<String> changes,
            List<String> doubts,
            List<ReviewLine> reviews,
            boolean mayReview,
            boolean directs,
            boolean agreed,
            @Nullable String zone) {}

    DraftPage draft(SignedIn who, String procedure) {
        RubricDraft draft = drafts.open(who, procedure).orElse(null);
        PublishedRubric inForce = rubrics.current(procedure);
        List<RubricFault> faults =
                draft == null ? List.of() : drafts.read(draft).faults();
        return new DraftPage(
                procedure,
                inForce.rubric().title(),
                inForce.rubric().version(),
                "/rubrics/" + inForce.id(),
                RubricPeople.directs(who),
                draft,
                draft == null ? "" : RubricDays.utc(draft.savedAt()),
                faults.stream().limit(MOST_FAULTS).map(this::fault).toList(),
                Math.max(0, faults.size() - MOST_FAULTS),
                zone(who),
                rubrics.takingCases().contains(procedure),
                releases.of(who, procedure).stream().map(this::effect).toList());
    }

    private String fault(RubricFault fault) {
        return fault.line() == 0 ? fault.message() : wording.text("rubric.draft.fault", fault.line(), fault.message());
    }

    private String effect(RubricEffect effect) {
        String day = RubricDays.in(ZoneId.of(effect.zone()), effect.effectiveFrom());
        boolean past = !effect.effectiveFrom().isAfter(clock.instant());
        Optional<PublishedRubric> version =
                Optional.ofNullable(effect.version()).flatMap(rubrics::byId);
        String end = past ? "rubric.effect.end" : "rubric.effect.end.planned";
        String begin = past ? "rubric.effect.version" : "rubric.effect.version.planned";
        return wording.text(
                version.isPresent() ? begin : end,
                version.map(published -> published.rubric().version()).orElse(""),
                day,
                effect.decidedName(),
                effect.reason());
    }

    ChangesPage changes(SignedIn who, String procedure) {
        RubricDraft draft = drafts.open(who, procedure).orElseThrow(NotFound::new);
        RubricReading reading = drafts.read(draft);
        Rubric inForce = rubrics.current(procedure).rubric();
        Rubric next = reading.rubric();
        List<RubricChange> changes = next == null ? List.of() : RubricComparison.between(inForce, next);
        return new ChangesPage(
                procedure,
                inForce.title(),
                inForce.version(),
                next == null ? "" : next.version(),
                draft.hash(),
                next == null,
                changes.stream()
                        .filter(change -> !doubt(change))
                        .map(this::sentence)
                        .toList(),
                changes.stream()
                        .filter(RubricChangePages::doubt)
                        .map(this::sentence)
                        .toList(),
                reviews.of(draft).stream().map(review -> line(draft, review)).toList(),
                next != null && !draft.authors().contains(who.personId()),
                RubricPeople.directs(who),
                next != null && reviews.agreement(draft).isPresent(),
                zone(who));
    }

    private static boolean doubt(RubricChange change) {
        return change.kind() == RubricChange.Kind.MEANING_IN_DOUBT;
    }

    private String sentence(RubricChange change) {
        boolean moved = change.kind() == RubricChange.Kind.STEP_MOVED;
        return wording.text(
                "rubric.change." + change.kind(),
                change.step(),
                change.name(),
                moved ? wording.text("rubric.phase." + change.before()) : change.before(),
                moved ? wording.text("rubric.phase." + change.after()) : change.after());
    }

    private static ReviewLine line(RubricDraft draft, RubricReview review) {
        return new ReviewLine(
                review.reviewerName(),
                RubricDays.utc(review.reviewedAt()),
                review.agrees(),
                review.sourceHash().equals(draft.hash()),
                review.words());
    }

    private @Nullable String zone(SignedIn who) {
        return RubricPeople.directs(who) ? people.zone(who).getId() : null;
    }
}
