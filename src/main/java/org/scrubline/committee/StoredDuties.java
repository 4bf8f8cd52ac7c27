package org.scrubline.committee;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.scrubline.committee.DecisionQueries.Filter;
import org.scrubline.entitlement.Entitlements;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredDuties implements Duties {

    private final DecisionQueries decisions;
    private final DecisionReading reading;
    private final Entitlements entitlements;
    private final GapReading gaps;
    private final CommitteeAccess access;
    private final People people;
    private final Settings settings;
    private final Clock clock;

    StoredDuties(
            DecisionQueries decisions,
            DecisionReading reading,
            Entitlements entitlements,
            GapReading gaps,
            CommitteeAccess access,
            People people,
            Settings settings,
            Clock clock) {
        this.decisions = decisions;
        this.reading = reading;
        this.entitlements = entitlements;
        this.gaps = gaps;
        this.access = access;
        this.people = people;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public List<OfProgramme> of(SignedIn who) {
        return people.programmes().stream()
                .filter(programme -> access.directsOrAdministers(who, programme.id()))
                .map(programme -> of(who, programme))
                .toList();
    }

    private OfProgramme of(SignedIn who, Programme programme) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), programme.zone());
        List<DecisionFile> files = decisions.find(Filter.programmes(List.of(programme.id()))).stream()
                .map(reading::file)
                .toList();
        boolean directs = access.directs(who, programme.id());
        return new OfProgramme(
                programme,
                files.stream()
                        .filter(file -> file.letter().isEmpty())
                        .map(file -> letter(file, programme, today))
                        .sorted(Comparator.comparing(Letter::dueOn))
                        .toList(),
                directs ? appeals(files, programme) : List.of(),
                directs ? reviews(programme, today) : List.of(),
                directs ? gaps.of(who, programme.id()) : List.of());
    }

    private Letter letter(DecisionFile file, Programme programme, LocalDate today) {
        LocalDate due = WorkingDays.after(
                day(file.decision().signed().signedAt(), programme),
                settings.of(programme.id()).letterWithinWorkingDays());
        return new Letter(file.id(), person(file.decision().traineeId()), due, due.isBefore(today));
    }

    private List<OpenAppeal> appeals(List<DecisionFile> files, Programme programme) {
        return files.stream()
                .filter(file -> file.appeal().waits())
                .map(file -> new OpenAppeal(
                        file.id(),
                        person(file.decision().traineeId()),
                        day(file.said(ActKind.APPEALED).orElseThrow().content().signedAt(), programme),
                        file.appeal()))
                .sorted(Comparator.comparing(OpenAppeal::since))
                .toList();
    }

    private List<Review> reviews(Programme programme, LocalDate today) {
        return entitlements.ofProgramme(programme.id()).stream()
                .filter(one -> one.reviewDue(today))
                .map(one -> new Review(person(one.traineeId()), one))
                .sorted(Comparator.comparing(review -> review.entitlement().reviewOn()))
                .toList();
    }

    private Person person(UUID id) {
        return people.person(id).orElseThrow(NotFound::new);
    }

    private static LocalDate day(Instant at, Programme programme) {
        return LocalDate.ofInstant(at, programme.zone());
    }
}
