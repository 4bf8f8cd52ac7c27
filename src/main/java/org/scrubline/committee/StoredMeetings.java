package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredMeetings implements Meetings {

    private final MeetingStore store;
    private final MeetingRules rules;
    private final DraftStore drafts;
    private final CommitteeAccess access;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredMeetings(
            MeetingStore store,
            MeetingRules rules,
            DraftStore drafts,
            CommitteeAccess access,
            People people,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.rules = rules;
        this.drafts = drafts;
        this.access = access;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Meeting> of(SignedIn who) {
        return store.ofProgrammes(access.seeing(who));
    }

    @Override
    @Transactional(readOnly = true)
    public Meeting read(SignedIn who, UUID meetingId) {
        return seen(who, store.find(meetingId));
    }

    private Meeting held(SignedIn who, UUID meetingId) {
        return seen(who, store.hold(meetingId));
    }

    private Meeting seen(SignedIn who, Optional<Meeting> found) {
        return found.filter(meeting -> access.seeing(who).contains(meeting.programmeId()))
                .orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Programme> planning(SignedIn who) {
        return people.programmes().stream()
                .filter(programme -> access.directsOrAdministers(who, programme.id()))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Person> invitable(SignedIn who, UUID programmeId) {
        require(access.directsOrAdministers(who, programmeId));
        return rules.invitable(programmeId);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Person> trainees(SignedIn who, UUID programmeId) {
        require(access.directsOrAdministers(who, programmeId));
        return rules.trainees(programmeId);
    }

    @Override
    public Attempt<Meeting> plan(SignedIn who, UUID programmeId, MeetingPlan plan) {
        require(access.directsOrAdministers(who, programmeId));
        List<Refusal> reasons = rules.against(programmeId, plan);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        UUID id = UUID.randomUUID();
        store.insert(id, programmeId, plan, who.personId(), clock.instant().truncatedTo(ChronoUnit.MILLIS));
        return Attempt.done(done(id, "meeting-planned"));
    }

    @Override
    public Attempt<Meeting> extend(SignedIn who, UUID meetingId, List<UUID> members, List<UUID> trainees) {
        Meeting meeting = held(who, meetingId);
        require(access.directsOrAdministers(who, meeting.programmeId()));
        if (!meeting.state().ahead()) {
            return Attempt.refused(over());
        }
        List<Refusal> reasons = rules.strangers(meeting.programmeId(), members, trainees);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        members.forEach(person -> store.invite(meetingId, person));
        trainees.forEach(person -> store.addTrainee(meetingId, person));
        return Attempt.done(done(meetingId, "meeting-changed"));
    }

    @Override
    public Attempt<Meeting> chair(SignedIn who, UUID meetingId, UUID personId) {
        Meeting meeting = held(who, meetingId);
        require(access.directs(who, meeting.programmeId()));
        if (!meeting.state().ahead()) {
            return Attempt.refused(over());
        }
        if (meeting.member(personId).isEmpty()) {
            return Attempt.refused(Refusal.at("chair", "committee.refusal.chair"));
        }
        store.chair(meetingId, personId);
        return Attempt.done(done(meetingId, "meeting-changed"));
    }

    @Override
    public Attempt<Meeting> move(SignedIn who, UUID meetingId, MeetingState next) {
        Meeting meeting = held(who, meetingId);
        require(
                next == MeetingState.CANCELLED
                        ? access.directsOrAdministers(who, meeting.programmeId())
                        : runs(who, meeting));
        if (!meeting.state().leadsTo(next)) {
            return Attempt.refused(Refusal.of("committee.refusal.move." + next.name()));
        }
        if (next == MeetingState.CLOSED && drafts.any(meetingId)) {
            return Attempt.refused(Refusal.of("committee.refusal.draft-open"));
        }
        store.move(meetingId, next);
        return Attempt.done(done(meetingId, "meeting-" + next.name().toLowerCase(Locale.ROOT)));
    }

    @Override
    public Attempt<Meeting> presence(SignedIn who, UUID meetingId, Set<UUID> present) {
        Meeting meeting = held(who, meetingId);
        require(runs(who, meeting) || access.directsOrAdministers(who, meeting.programmeId()));
        if (meeting.state() != MeetingState.OPEN) {
            return Attempt.refused(Refusal.at("present", "committee.refusal.not-open"));
        }
        if (present.stream().anyMatch(person -> meeting.member(person).isEmpty())) {
            return Attempt.refused(Refusal.at("present", "committee.refusal.not-invited"));
        }
        store.presence(meetingId, present);
        return Attempt.done(done(meetingId, "meeting-changed"));
    }

    @Override
    public Attempt<Meeting> declareConflict(
            SignedIn who, UUID meetingId, UUID memberId, UUID traineeId, String reason) {
        Meeting meeting = held(who, meetingId);
        require(runs(who, meeting) || who.personId().equals(memberId));
        String why = FreeText.tidy(reason);
        Optional<Refusal> text = why.isEmpty()
                ? Optional.of(Refusal.at("reason", "committee.refusal.conflict-reason"))
                : FreeText.check("reason", why, REASON_LENGTH);
        if (text.isPresent()) {
            return Attempt.refused(text.get());
        }
        if (!meeting.state().ahead()) {
            return Attempt.refused(over());
        }
        if (meeting.member(memberId).isEmpty() || meeting.trainee(traineeId).isEmpty()) {
            return Attempt.refused(Refusal.at("trainee", "committee.refusal.conflict-who"));
        }
        store.conflict(
                meetingId,
                who.personId(),
                new Meeting.Conflict(memberId, traineeId, why, clock.instant().truncatedTo(ChronoUnit.MILLIS)));
        return Attempt.done(done(meetingId, "meeting-changed"));
    }

    /** The chair, or a director when the chair is away. */
    private boolean runs(SignedIn who, Meeting meeting) {
        return meeting.chairId().equals(who.personId()) || access.directs(who, meeting.programmeId());
    }

    private static Refusal over() {
        return Refusal.of("committee.refusal.over");
    }

    private Meeting done(UUID meetingId, String action) {
        Meeting meeting = store.find(meetingId).orElseThrow();
        events.publishEvent(CommitteeDone.meeting(action, meeting));
        return meeting;
    }
}
