package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.committee.DecisionQueries.Filter;
import org.scrubline.entitlement.Bands;
import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads decisions for those who may. */
@Service
@Transactional(readOnly = true)
class DecisionReading {

    private final DecisionQueries queries;
    private final ActStore acts;
    private final MeetingStore meetings;
    private final PackStore packs;
    private final DraftStore drafts;
    private final Ballots ballots;
    private final CommitteeAccess access;
    private final Visitors visitors;

    DecisionReading(
            DecisionQueries queries,
            ActStore acts,
            MeetingStore meetings,
            PackStore packs,
            DraftStore drafts,
            Ballots ballots,
            CommitteeAccess access,
            Visitors visitors) {
        this.queries = queries;
        this.acts = acts;
        this.meetings = meetings;
        this.packs = packs;
        this.drafts = drafts;
        this.ballots = ballots;
        this.access = access;
        this.visitors = visitors;
    }

    public Ballot ballot(SignedIn who, UUID meetingId, UUID traineeId) {
        Meeting meeting = reads(who, meetingId, traineeId);
        Pack pack = packs.find(meetingId, traineeId).orElseThrow(NotFound::new);
        return ballots.of(meeting, pack.content());
    }

    public Optional<DecisionDraft> draft(SignedIn who, UUID meetingId, UUID traineeId) {
        reads(who, meetingId, traineeId);
        return packs.find(meetingId, traineeId)
                .flatMap(pack -> drafts.find(pack.id()))
                .map(DraftStore.Row::draft);
    }

    private Meeting reads(SignedIn who, UUID meetingId, UUID traineeId) {
        Meeting meeting = meetings.find(meetingId).orElseThrow(NotFound::new);
        require(access.reads(who, meeting.programmeId(), traineeId));
        return meeting;
    }

    public DecisionFile read(SignedIn who, UUID decisionId) {
        DecisionFile file = file(queries.byId(decisionId).orElseThrow(NotFound::new));
        Decision decision = file.decision();
        require(access.reads(who, decision.programmeId(), decision.traineeId())
                || decision.traineeId().equals(who.personId())
                || access.visits(who, decision.programmeId(), decision.traineeId())
                || file.hears(who.personId()));
        return file;
    }

    /** Nobody finds a decision about themselves among those of a meeting; theirs stand under "about me". */
    public List<Decision> ofMeeting(SignedIn who, UUID meetingId) {
        return queries.find(Filter.meeting(meetingId)).stream()
                .filter(decision -> access.reads(who, decision.programmeId(), decision.traineeId()))
                .toList();
    }

    public List<DecisionFile> concerning(SignedIn who) {
        Stream<Decision> own = queries.find(Filter.trainee(who.personId())).stream();
        Stream<Decision> open = visitors.open(who).stream()
                .map(VisitorAccess::programmeId)
                .distinct()
                .flatMap(programme -> queries.find(Filter.programmes(List.of(programme))).stream())
                .filter(decision -> access.visits(who, decision.programmeId(), decision.traineeId()));
        Stream<Decision> heard = acts.heardBy(who.personId()).stream()
                .flatMap(id -> queries.byId(id).stream())
                .filter(decision -> file(decision).hears(who.personId()));
        return Stream.of(own, open, heard)
                .flatMap(some -> some)
                .distinct()
                .sorted(Comparator.comparing(
                                (Decision decision) -> decision.signed().signedAt())
                        .reversed()
                        .thenComparing(Decision::id))
                .map(this::file)
                .toList();
    }

    public DecisionFile file(Decision decision) {
        boolean replaced = queries.find(Filter.trainee(decision.traineeId())).stream()
                .anyMatch(later ->
                        later.signed().signedAt().isAfter(decision.signed().signedAt())
                                && covers(later.content(), decision.content()));
        return new DecisionFile(decision, acts.ofDecision(decision.id()), replaced);
    }

    /** Whether a later decision speaks about every band of an earlier one. */
    private static boolean covers(DecisionContent later, DecisionContent earlier) {
        return later.programme().equals(earlier.programme())
                && later.family() == earlier.family()
                && Bands.read(later.bands()).containsAll(Bands.read(earlier.bands()));
    }
}
