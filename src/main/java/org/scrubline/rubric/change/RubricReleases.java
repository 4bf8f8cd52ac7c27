package org.scrubline.rubric.change;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Publishes reviewed drafts with their first day, and retires procedures. A version goes out of use only by a newer one or
 * with its procedure; cases logged before keep the version they have.
 */
@Service
@Transactional
public class RubricReleases {

    /** Longest reason in characters. */
    static final int REASON_LENGTH = 500;

    private final RubricDrafts drafts;
    private final RubricDraftStore draftStore;
    private final RubricReviews reviews;
    private final EffectStore effects;
    private final Rubrics rubrics;
    private final RubricPeople people;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RubricReleases(
            RubricDrafts drafts,
            RubricDraftStore draftStore,
            RubricReviews reviews,
            EffectStore effects,
            Rubrics rubrics,
            RubricPeople people,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.drafts = drafts;
        this.draftStore = draftStore;
        this.reviews = reviews;
        this.effects = effects;
        this.rubrics = rubrics;
        this.people = people;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** What was decided about a procedure; what takes effect last comes first. */
    @Transactional(readOnly = true)
    public List<RubricEffect> of(SignedIn who, String procedure) {
        RubricPeople.requireReader(who);
        return effects.of(procedure);
    }

    /**
     * Publishes the open draft.
     *
     * @param hash of the text the director read
     * @param day first day in the zone of the director's programme, from today to a year ahead
     * @return the version, or why not, at the fields {@code day} and {@code reason} or the whole form
     * @throws org.scrubline.platform.StaleData when the text is another by now
     */
    public Attempt<PublishedRubric> publish(
            SignedIn director, String procedure, String hash, String day, String reason) {
        RubricPeople.requireDirector(director);
        RubricDraft draft = drafts.open(director, procedure).orElseThrow(NotFound::new);
        if (!draft.hash().equals(hash)) {
            throw RubricDrafts.stale(draft, "");
        }
        List<Refusal> reasons = against(director, day, FreeText.tidy(reason));
        Rubric rubric = drafts.read(draft).rubric();
        Optional<RubricReview> agreement = reviews.agreement(draft);
        if (rubric == null) {
            reasons.add(Refusal.of("refusal.rubric.faulty"));
        } else if (agreement.isEmpty()) {
            reasons.add(Refusal.of("refusal.rubric.unreviewed"));
        }
        if (!reasons.isEmpty() || rubric == null || agreement.isEmpty()) {
            return Attempt.refused(reasons);
        }
        if (!draftStore.end(draft, now())) {
            throw RubricDrafts.stale(draft, "");
        }
        PublishedRubric published = rubrics.publish(rubric, director.personId()).orThrow();
        RubricEffect effect = effect(director, procedure, published, agreement.get(), day, reason);
        fix(director, effect, "rubric-in-force", rubric.title() + " " + rubric.version());
        return Attempt.done(rubrics.byId(published.id()).orElseThrow());
    }

    /**
     * Lets a procedure take no new cases from a day on; a later version brings it back.
     *
     * @return when, or why not, at the fields {@code day} and {@code reason}
     */
    public Attempt<Instant> retire(SignedIn director, String procedure, String day, String reason) {
        RubricPeople.requireDirector(director);
        Rubric rubric = rubrics.current(procedure).rubric();
        List<Refusal> reasons = against(director, day, FreeText.tidy(reason));
        if (!rubrics.takingCases().contains(procedure)) {
            reasons.add(Refusal.of("refusal.rubric.retired"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        RubricEffect effect = effect(director, procedure, null, null, day, reason);
        fix(director, effect, "rubric-retired", rubric.title());
        return Attempt.done(effect.effectiveFrom());
    }

    private List<Refusal> against(SignedIn director, String day, String reason) {
        List<Refusal> reasons = new ArrayList<>();
        if (FirstDay.begins(day, people.zone(director), now()).isEmpty()) {
            reasons.add(Refusal.at("day", "refusal.rubric.day"));
        }
        if (reason.isEmpty()) {
            reasons.add(Refusal.at("reason", "refusal.rubric.reason"));
        }
        FreeText.narrative("reason", reason, REASON_LENGTH).ifPresent(reasons::add);
        return reasons;
    }

    private RubricEffect effect(
            SignedIn director,
            String procedure,
            @Nullable PublishedRubric published,
            @Nullable RubricReview review,
            String day,
            String reason) {
        Instant at = published == null ? now() : published.publishedAt();
        ZoneId zone = people.zone(director);
        return new RubricEffect(
                UUID.randomUUID(),
                procedure,
                published == null ? null : published.id(),
                review == null ? null : review.id(),
                FirstDay.begins(day, zone, at).orElse(at),
                zone.getId(),
                FreeText.tidy(reason),
                director.personId(),
                director.printedName(),
                at);
    }

    private void fix(SignedIn director, RubricEffect effect, String action, String label) {
        effects.insert(effect);
        String day = LocalDate.ofInstant(effect.effectiveFrom(), ZoneId.of(effect.zone()))
                .toString();
        events.publishEvent(
                new RubricDeed(action, director.personId(), RubricDeed.item(effect.id(), label), effect.reason(), day));
        ledger.append(LeafKind.RUBRIC_EFFECT, effect.id());
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
