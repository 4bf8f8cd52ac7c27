package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.DecisionQueries.Filter;
import org.scrubline.committee.Decisions.Preview;
import org.scrubline.entitlement.Bands;
import org.scrubline.entitlement.EntitlementBook;
import org.scrubline.entitlement.EntitlementChange;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Writing, showing and signing a decision, one transaction each. Whoever calls has recognised the chair. */
@Service
@Transactional
class DecisionDesk {

    private final MeetingStore meetings;
    private final PackStore packs;
    private final DraftStore drafts;
    private final DecisionStore store;
    private final DecisionQueries queries;
    private final DecisionWriter writer;
    private final EntitlementBook entitlements;
    private final People people;
    private final Ledger ledger;
    private final Assertions assertions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    DecisionDesk(
            MeetingStore meetings,
            PackStore packs,
            DraftStore drafts,
            DecisionStore store,
            DecisionQueries queries,
            DecisionWriter writer,
            EntitlementBook entitlements,
            People people,
            Ledger ledger,
            Assertions assertions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.meetings = meetings;
        this.packs = packs;
        this.drafts = drafts;
        this.store = store;
        this.queries = queries;
        this.writer = writer;
        this.entitlements = entitlements;
        this.people = people;
        this.ledger = ledger;
        this.assertions = assertions;
        this.events = events;
        this.clock = clock;
    }

    public Attempt<DecisionDraft> write(SignedIn chair, UUID meetingId, UUID traineeId, DecisionDraft draft) {
        Meeting meeting = held(chair, meetingId);
        Pack pack = pack(meeting, traineeId);
        if (meeting.state() != MeetingState.OPEN) {
            return Attempt.refused(Refusal.of("committee.refusal.not-open"));
        }
        List<Refusal> reasons = DecisionWriter.incomplete(draft);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        drafts.write(
                new DraftStore.Row(pack.id(), chair.personId(), draft),
                clock.instant().truncatedTo(ChronoUnit.MILLIS));
        return Attempt.done(draft);
    }

    public void drop(SignedIn chair, UUID meetingId, UUID traineeId) {
        drafts.delete(pack(held(chair, meetingId), traineeId).id());
    }

    @Transactional(readOnly = true)
    public Preview preview(SignedIn chair, UUID meetingId, UUID traineeId) {
        return preview(chair, chaired(chair, meetings.find(meetingId)), traineeId);
    }

    private Preview preview(SignedIn chair, Meeting meeting, UUID traineeId) {
        Pack pack = pack(meeting, traineeId);
        DecisionDraft draft = drafts.find(pack.id()).map(DraftStore.Row::draft).orElseThrow(NotFound::new);
        return writer.preview(chair, meeting, pack, draft, before(meeting, traineeId));
    }

    private List<Decision> before(Meeting meeting, UUID traineeId) {
        return queries.find(Filter.trainee(traineeId)).stream()
                .filter(decision -> decision.programmeId().equals(meeting.programmeId()))
                .toList();
    }

    /** Signs what is written; null stands for a history that never was. */
    public Attempt<Decision> sign(
            SignedIn chair, UUID meetingId, UUID traineeId, @Nullable String hash, @Nullable Recognised how) {
        Meeting meeting = held(chair, meetingId);
        store.lock(traineeId);
        Preview preview = preview(chair, meeting, traineeId);
        if (hash != null && !hash.equals(preview.hash())) {
            throw new StaleData(
                    "/meetings/" + meetingId + "/trainees/" + traineeId + "/decision/review",
                    List.of(new StaleData.Line("SHA-256", hash, preview.hash())));
        }
        return preview.obstacles().isEmpty()
                ? Attempt.done(signed(preview, how))
                : Attempt.refused(preview.obstacles());
    }

    private Decision signed(Preview preview, @Nullable Recognised how) {
        Programme programme = people.programme(preview.content().programme().id());
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Decision decision = Decision.of(new SignedDecision(
                preview.content(), preview.hash(), now, programme.zone(), how == null ? null : how.used()));
        store.insert(decision);
        drafts.delete(preview.pack().id());
        events.publishEvent(CommitteeDone.record(
                "decision-signed", "committee-decision", decision.id(), decision.traineeId(), decision.programmeId()));
        entitle(decision, now);
        ledger.append(LeafKind.DECISION, decision.id());
        if (how != null) {
            assertions.keep(LeafKind.DECISION, decision.id(), how);
        }
        return decision;
    }

    /** "Insufficient evidence" leaves what holds as it is. */
    private void entitle(Decision decision, Instant at) {
        DecisionContent content = decision.content();
        if (content.level() != null) {
            entitlements.record(new EntitlementChange(
                    decision.programmeId(),
                    decision.traineeId(),
                    content.family(),
                    Bands.read(content.bands()),
                    EntitlementChange.Kind.DECIDED,
                    content.level(),
                    content.reviewOn(),
                    decision.id(),
                    content.signer().id(),
                    at));
        }
    }

    private Meeting held(SignedIn chair, UUID meetingId) {
        return chaired(chair, meetings.hold(meetingId));
    }

    private static Meeting chaired(SignedIn chair, Optional<Meeting> found) {
        Meeting meeting = found.orElseThrow(NotFound::new);
        require(meeting.chairId().equals(chair.personId()) && member(chair, meeting.programmeId()));
        return meeting;
    }

    private static boolean member(SignedIn who, UUID programme) {
        return who.has(Role.DIRECTOR, programme) || who.has(Role.COMMITTEE_MEMBER, programme);
    }

    private Pack pack(Meeting meeting, UUID traineeId) {
        return packs.find(meeting.id(), traineeId).orElseThrow(NotFound::new);
    }
}
