package org.scrubline.committee;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.DecisionContent.Ballotting;
import org.scrubline.committee.DecisionContent.Referred;
import org.scrubline.committee.DecisionContent.Said;
import org.scrubline.committee.Decisions.Preview;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.entitlement.Bands;
import org.scrubline.people.People;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.springframework.stereotype.Component;

/** Writes a decision out of what the chair wrote and who was there; without a clock, so that what is shown is what is signed. */
@Component
class DecisionWriter {

    private final Ballots ballots;
    private final DecisionRules rules;
    private final Signers signers;
    private final People people;

    DecisionWriter(Ballots ballots, DecisionRules rules, Signers signers, People people) {
        this.ballots = ballots;
        this.rules = rules;
        this.signers = signers;
        this.people = people;
    }

    /** What is missing before it can be shown as a decision. */
    static List<Refusal> incomplete(DecisionDraft draft) {
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
        if (draft.reviewOn() == null) {
            reasons.add(Refusal.at("reviewOn", "committee.refusal.review-missing"));
        }
        return reasons;
    }

    Preview preview(SignedIn chair, Meeting meeting, Pack pack, DecisionDraft draft, List<Decision> before) {
        PackContent evidence = pack.content();
        DecisionRules.Case one = new DecisionRules.Case(
                meeting,
                evidence,
                ballots.of(meeting, evidence),
                draft,
                before,
                people.programme(meeting.programmeId()).zone());
        DecisionContent content = content(chair, one, pack);
        String json = CanonicalJson.of(content);
        List<Refusal> obstacles = new ArrayList<>(rules.against(one, chair.personId()));
        signers.standing(chair.personId()).ifPresent(obstacles::add);
        return new Preview(pack, content, json, CanonicalJson.sha256(json), obstacles);
    }

    private DecisionContent content(SignedIn chair, DecisionRules.Case one, Pack pack) {
        DecisionDraft draft = one.draft();
        boolean departs = DecisionRules.departs(one);
        return new DecisionContent(
                DecisionContent.SCHEMA,
                one.pack().organisation(),
                one.pack().programme(),
                one.meeting().id(),
                one.meeting().plannedAt(),
                new Referred(pack.id(), pack.hash()),
                one.pack().trainee(),
                Objects.requireNonNull(draft.family()),
                Bands.write(draft.bands()),
                draft.level(),
                Objects.requireNonNull(draft.reviewOn()),
                DecisionRules.levels(one.pack(), draft).stream()
                        .map(line -> new Said(line.level(), line.answer()))
                        .toList(),
                departs,
                draft.reasons(),
                departs ? draft.departing() : "",
                draft.dissent(),
                members(one),
                one.ballot().quorum(),
                DecisionRules.replaced(one)
                        .map(decision -> new Referred(decision.id(), decision.hash()))
                        .orElse(null),
                signers.sign(chair, Signers.role(chair, one.meeting().programmeId()), "decision"));
    }

    private static List<Ballotting> members(DecisionRules.Case one) {
        return one.ballot().voters().stream()
                .map(voter -> new Ballotting(
                        new Named(voter.id(), voter.name()),
                        voter.present(),
                        voter.bar(),
                        declared(one, voter.id()),
                        voter.scored(),
                        voter.votes() ? one.draft().votes().get(voter.id()) : null))
                .toList();
    }

    private static @Nullable String declared(DecisionRules.Case one, UUID member) {
        return one.meeting()
                .conflict(member, one.pack().trainee().id())
                .map(Meeting.Conflict::reason)
                .orElse(null);
    }
}
