package org.scrubline.rubric.change;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Audited;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What second people say about a draft. Nobody reviews what they wrote, and a review holds for one text alone. */
@Service
@Transactional
public class RubricReviews {

    /** Longest answer in characters. */
    static final int WORDS_LENGTH = 1000;

    private final ReviewStore store;
    private final RubricDrafts drafts;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RubricReviews(
            ReviewStore store, RubricDrafts drafts, Ledger ledger, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.drafts = drafts;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** Everything said about a draft, also about its earlier texts, newest first. */
    @Transactional(readOnly = true)
    public List<RubricReview> of(RubricDraft draft) {
        return store.of(draft.id());
    }

    /** The agreement the text as it stands rests on; empty without one, and while somebody objects to this text. */
    @Transactional(readOnly = true)
    public Optional<RubricReview> agreement(RubricDraft draft) {
        Map<UUID, RubricReview> newest = new LinkedHashMap<>();
        store.of(draft.id()).stream()
                .filter(review -> review.sourceHash().equals(draft.hash()))
                .forEach(review -> newest.putIfAbsent(review.reviewerId(), review));
        boolean objected = newest.values().stream().anyMatch(review -> !review.agrees());
        return objected ? Optional.empty() : newest.values().stream().findFirst();
    }

    /**
     * Agrees or objects.
     *
     * @param hash of the text the reviewer read
     * @param answer {@code agree} or {@code object}
     * @return the review, or why not, at the fields {@code answer} and {@code words} or the whole form
     * @throws org.scrubline.platform.StaleData when the text is another by now
     */
    public Attempt<RubricReview> review(SignedIn who, String procedure, String hash, String answer, String words) {
        RubricDraft draft = drafts.open(who, procedure).orElseThrow(NotFound::new);
        if (!draft.hash().equals(hash)) {
            throw RubricDrafts.stale(draft, "");
        }
        Rubric rubric = drafts.read(draft).rubric();
        String text = FreeText.tidy(words);
        List<Refusal> reasons = against(who, draft, answer, text);
        if (rubric == null) {
            reasons.add(Refusal.of("refusal.rubric.faulty"));
        }
        if (!reasons.isEmpty() || rubric == null) {
            return Attempt.refused(reasons);
        }
        RubricReview review = new RubricReview(
                UUID.randomUUID(),
                draft.id(),
                hash,
                CanonicalJson.sha256(CanonicalJson.of(rubric)),
                answer.equals("agree"),
                text,
                who.personId(),
                who.printedName(),
                clock.instant().truncatedTo(ChronoUnit.MICROS));
        store.insert(review);
        Audited.Item item = RubricDeed.item(review.id(), rubric.title() + " " + rubric.version());
        String action = review.agrees() ? "rubric-agreed" : "rubric-objected";
        events.publishEvent(new RubricDeed(action, who.personId(), item, text, "sha256:" + hash));
        ledger.append(LeafKind.RUBRIC_REVIEW, review.id());
        return Attempt.done(review);
    }

    private static List<Refusal> against(SignedIn who, RubricDraft draft, String answer, String words) {
        List<Refusal> reasons = new ArrayList<>();
        if (draft.authors().contains(who.personId())) {
            reasons.add(Refusal.of("refusal.rubric.author"));
        }
        if (!answer.equals("agree") && !answer.equals("object")) {
            reasons.add(Refusal.at("answer", "refusal.rubric.answer"));
        }
        if (words.isEmpty()) {
            reasons.add(Refusal.at("words", "refusal.rubric.words"));
        }
        FreeText.narrative("words", words, WORDS_LENGTH).ifPresent(reasons::add);
        return reasons;
    }
}
