package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.committee.pack.PackWriter;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredPacks implements Packs {

    private final PackStore store;
    private final MeetingStore meetings;
    private final DecisionQueries decisions;
    private final CommitteeAccess access;
    private final PackWriter writer;
    private final People people;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredPacks(
            PackStore store,
            MeetingStore meetings,
            DecisionQueries decisions,
            CommitteeAccess access,
            PackWriter writer,
            People people,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.meetings = meetings;
        this.decisions = decisions;
        this.access = access;
        this.writer = writer;
        this.people = people;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Attempt<Frozen> freeze(SignedIn who, UUID meetingId, UUID traineeId) {
        Meeting meeting = meetings.hold(meetingId).orElseThrow(NotFound::new);
        require(access.directsOrAdministers(who, meeting.programmeId())
                || (meeting.chairId().equals(who.personId())
                        && access.seeing(who).contains(meeting.programmeId())));
        Person trainee = meeting.trainee(traineeId).orElseThrow(NotFound::new);
        if (!meeting.state().ahead()) {
            return Attempt.refused(Refusal.of("committee.refusal.over"));
        }
        if (store.find(meetingId, traineeId).isPresent()) {
            return Attempt.refused(Refusal.of("committee.refusal.frozen"));
        }
        return Attempt.done(frozen(who, meeting, trainee));
    }

    private Frozen frozen(SignedIn who, Meeting meeting, Person trainee) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Instant cutOff = now.minus(SETTLED);
        Named organisation = new Named(who.tenantId(), who.organisationName());
        String json = CanonicalJson.of(writer.write(subject(organisation, meeting, trainee), cutOff));
        Pack pack =
                new Pack(UUID.randomUUID(), meeting.id(), trainee.id(), cutOff, json, CanonicalJson.sha256(json), now);
        store.insert(pack, who.personId());
        events.publishEvent(
                CommitteeDone.record("pack-frozen", "evidence-pack", pack.id(), trainee.id(), meeting.programmeId()));
        ledger.append(LeafKind.EVIDENCE_PACK, pack.id());
        return new Frozen(trainee.id(), cutOff, pack.hash());
    }

    private PackWriter.Subject subject(Named organisation, Meeting meeting, Person trainee) {
        Programme programme = people.programme(meeting.programmeId());
        return new PackWriter.Subject(
                organisation,
                new Named(programme.id(), programme.name()),
                meeting.id(),
                new Named(trainee.id(), trainee.printedName()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Frozen> frozen(SignedIn who, UUID meetingId) {
        Meeting meeting = meetings.find(meetingId).orElseThrow(NotFound::new);
        require(access.seeing(who).contains(meeting.programmeId()));
        return store.frozen(meetingId);
    }

    @Override
    @Transactional(readOnly = true)
    public Pack read(SignedIn who, UUID meetingId, UUID traineeId) {
        return find(who, meetingId, traineeId).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Pack> find(SignedIn who, UUID meetingId, UUID traineeId) {
        Meeting meeting = meetings.find(meetingId).orElseThrow(NotFound::new);
        Optional<Pack> pack = store.find(meetingId, traineeId);
        boolean may = access.reads(who, meeting.programmeId(), traineeId)
                || (pack.isPresent() && readsDecided(who, meeting, pack.get()));
        require(may && meeting.trainee(traineeId).isPresent());
        return pack;
    }

    private boolean readsDecided(SignedIn who, Meeting meeting, Pack pack) {
        boolean concerned = who.personId().equals(pack.traineeId())
                || access.visits(who, meeting.programmeId(), pack.traineeId())
                || decisions.hears(who.personId(), pack.id());
        return concerned && decisions.restsOn(pack.id());
    }

    @Override
    @Transactional(readOnly = true)
    public Rebuilt rebuild(SignedIn who, UUID meetingId, UUID traineeId) {
        Pack pack = read(who, meetingId, traineeId);
        Meeting meeting = meetings.find(meetingId).orElseThrow(NotFound::new);
        Person trainee = people.person(traineeId).orElseThrow(NotFound::new);
        PackWriter.Subject subject = subject(pack.content().organisation(), meeting, trainee);
        PackContent again = writer.write(subject, pack.cutOff(), pack.content().schema());
        String hash = CanonicalJson.sha256(CanonicalJson.of(again));
        return new Rebuilt(hash, hash.equals(pack.hash()));
    }
}
