package org.scrubline.committee;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.committee.pack.PackContent.Answer;
import org.scrubline.committee.pack.PackContent.LevelLine;
import org.scrubline.entitlement.Bands;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.springframework.stereotype.Component;

/** What stands against a decision as it is written down, every reason at once. */
@Component
class DecisionRules {

    private static final int LONGEST_REVIEW_DAYS = 366;

    private final Clock clock;

    DecisionRules(Clock clock) {
        this.clock = clock;
    }

    /**
     * What a decision is judged by.
     *
     * @param before decisions about the trainee, the newest first
     */
    record Case(
            Meeting meeting,
            PackContent pack,
            Ballot ballot,
            DecisionDraft draft,
            List<Decision> before,
            ZoneId zone) {}

    /** The same for whoever signs. */
    List<Refusal> against(Case one, UUID signer) {
        List<Refusal> reasons = new ArrayList<>(meeting(one, signer));
        reasons.addAll(matter(one));
        reasons.addAll(votes(one));
        reasons.addAll(words(one));
        return reasons;
    }

    private static List<Refusal> meeting(Case one, UUID signer) {
        List<Refusal> reasons = new ArrayList<>();
        if (one.meeting().state() != MeetingState.OPEN) {
            reasons.add(Refusal.of("committee.refusal.not-open"));
        }
        if (!one.meeting().chairId().equals(signer)) {
            reasons.add(Refusal.of("committee.refusal.not-chair"));
        } else if (one.ballot().voter(signer).filter(Ballot.Voter::votes).isEmpty()) {
            reasons.add(Refusal.of("committee.refusal.chair-barred"));
        }
        if (!one.ballot().quorate()) {
            reasons.add(Refusal.of(
                    "committee.refusal.quorum",
                    one.ballot().voting().size(),
                    one.ballot().quorum()));
        }
        return reasons;
    }

    private List<Refusal> matter(Case one) {
        DecisionDraft draft = one.draft();
        List<Refusal> reasons = new ArrayList<>();
        if (draft.family() == null) {
            reasons.add(Refusal.at("family", "committee.refusal.family"));
        }
        if (draft.bands().isEmpty()) {
            reasons.add(Refusal.at("bands", "committee.refusal.bands"));
        }
        if (!draft.answered()) {
            reasons.add(Refusal.at("level", "committee.refusal.level"));
        }
        LocalDate today = LocalDate.ofInstant(clock.instant(), one.zone());
        LocalDate review = draft.reviewOn();
        if (review == null || !review.isAfter(today) || review.isAfter(today.plusDays(LONGEST_REVIEW_DAYS))) {
            reasons.add(Refusal.at("reviewOn", "committee.refusal.review", LONGEST_REVIEW_DAYS));
        }
        if (one.before().stream().anyMatch(decision -> sameMatter(decision, one))) {
            reasons.add(Refusal.at("family", "committee.refusal.decided"));
        }
        return reasons;
    }

    /** In one meeting a family's band is decided once; what is wrong with it is for an appeal or another meeting. */
    private static boolean sameMatter(Decision decision, Case one) {
        return decision.content().meeting().equals(one.meeting().id()) && overlaps(decision, one.draft());
    }

    private static boolean overlaps(Decision decision, DecisionDraft draft) {
        return decision.content().family() == draft.family()
                && Bands.read(decision.content().bands()).stream().anyMatch(draft.bands()::contains);
    }

    /** The newest decision this one takes the place of. */
    static Optional<Decision> replaced(Case one) {
        return one.before().stream()
                .filter(decision -> overlaps(decision, one.draft()))
                .findFirst();
    }

    private static List<Refusal> votes(Case one) {
        Set<UUID> voting = one.ballot().voting().stream().map(Ballot.Voter::id).collect(Collectors.toSet());
        List<Refusal> reasons = new ArrayList<>();
        if (!one.draft().votes().keySet().equals(voting)) {
            reasons.add(Refusal.at("votes", "committee.refusal.votes"));
        }
        if (count(one, Vote.FOR) <= count(one, Vote.AGAINST)) {
            reasons.add(
                    Refusal.at("votes", "committee.refusal.majority", count(one, Vote.FOR), count(one, Vote.AGAINST)));
        }
        return reasons;
    }

    private static long count(Case one, Vote vote) {
        return one.draft().votes().values().stream().filter(vote::equals).count();
    }

    private static List<Refusal> words(Case one) {
        DecisionDraft draft = one.draft();
        List<Refusal> reasons = new ArrayList<>();
        reason("reasons", draft.reasons()).ifPresent(reasons::add);
        if (departs(one)) {
            reason("departing", draft.departing())
                    .map(short_ -> short_.messageKey().equals("committee.refusal.reason")
                            ? Refusal.at("departing", "committee.refusal.departing", Decisions.SHORTEST_REASON)
                            : short_)
                    .ifPresent(reasons::add);
        }
        FreeText.check("dissent", draft.dissent(), Decisions.LONGEST_TEXT).ifPresent(reasons::add);
        return reasons;
    }

    static Optional<Refusal> reason(String field, String text) {
        int length = text.codePointCount(0, text.length());
        return length < Decisions.SHORTEST_REASON
                ? Optional.of(Refusal.at(field, "committee.refusal.reason", Decisions.SHORTEST_REASON))
                : FreeText.check(field, text, Decisions.LONGEST_TEXT);
    }

    /**
     * Whether a decision departs from what the evidence says: a level is set that it does not support, or one it supports
     * is not reached. About E0, E1 and E5 it says nothing.
     */
    static boolean departs(Case one) {
        List<LevelLine> levels = levels(one.pack(), one.draft());
        EntitlementLevel level = one.draft().level();
        EntitlementLevel supported = highest(levels);
        boolean unsupported = level != null
                && levels.stream()
                        .filter(line -> line.level().equals(level.name()))
                        .anyMatch(line -> line.answer() != Answer.SUPPORTS);
        boolean asked = level == EntitlementLevel.E2 || level == EntitlementLevel.E3 || level == EntitlementLevel.E4;
        boolean noEvidence = asked && levels.isEmpty();
        boolean below = supported != null && (level == null || level.compareTo(supported) < 0);
        return unsupported || noEvidence || below;
    }

    static List<LevelLine> levels(PackContent pack, DecisionDraft draft) {
        return draft.family() == null
                ? List.of()
                : pack.family(draft.family())
                        .map(PackContent.FamilyLine::levels)
                        .orElse(List.of());
    }

    private static @Nullable EntitlementLevel highest(List<LevelLine> levels) {
        return levels.stream()
                .filter(line -> line.answer() == Answer.SUPPORTS)
                .map(line -> EntitlementLevel.valueOf(line.level()))
                .max(EntitlementLevel::compareTo)
                .orElse(null);
    }
}
