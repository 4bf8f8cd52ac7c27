package org.scrubline.people;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Where the trainees of a programme work and when. Placements are history: one that changes is ended and another recorded.
 * No two of one trainee share a day.
 */
@Service
@Transactional
public class Placements {

    private final PlacementStore store;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Placements(PlacementStore store, People people, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    /** By name of the trainee and first day, with those that ended early or never began. */
    @Transactional(readOnly = true)
    public List<Placement> of(UUID programmeId) {
        return store.of(programmeId);
    }

    /** One trainee's time in the programme. */
    @Transactional(readOnly = true)
    public TrainingTime time(UUID programmeId, UUID traineeId) {
        return new TrainingTime(store.of(programmeId).stream()
                .filter(one -> one.traineeId().equals(traineeId))
                .toList());
    }

    /**
     * Places a trainee at a site.
     *
     * @return the placement, or why not, at the fields {@code trainee}, {@code site}, {@code first}, {@code last} and
     *     {@code share}
     * @throws NotFound for anyone who neither directs nor administers the programme
     */
    public Attempt<Placement> place(SignedIn who, UUID programmeId, PlacementEntry entry) {
        require(who, programmeId);
        List<Refusal> reasons = new ArrayList<>();
        Optional<UUID> trainee = people.holding(programmeId, Role.TRAINEE).stream()
                .map(Person::id)
                .filter(id -> id.toString().equals(entry.trainee()))
                .findFirst();
        Optional<Site> site = people.sites().stream()
                .filter(one -> one.id().toString().equals(entry.site()))
                .findFirst();
        Optional<LocalDate> first = TypedDay.of(entry.first());
        Optional<LocalDate> last =
                TypedDay.of(entry.last()).filter(day -> first.isEmpty() || !day.isBefore(first.get()));
        Optional<Integer> share = share(entry.share());
        unless(trainee, "trainee", "refusal.placement.trainee", reasons);
        unless(site, "site", "refusal.placement.site", reasons);
        unless(first, "first", "refusal.day", reasons);
        unless(last, "last", "refusal.placement.last", reasons);
        unless(share, "share", "refusal.placement.share", reasons);
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        Placement placement = new Placement(
                UUID.randomUUID(), trainee.get(), site.get().id(), first.get(), last.get(), share.get(), null);
        return place(who, programmeId, placement, site.get());
    }

    private static void unless(Optional<?> found, String field, String key, List<Refusal> reasons) {
        if (found.isEmpty()) {
            reasons.add(Refusal.at(field, key));
        }
    }

    private static Optional<Integer> share(String typed) {
        return Optional.of(typed.strip())
                .filter(digits -> digits.matches("\\d{1,3}"))
                .map(Integer::valueOf)
                .filter(percent -> percent >= 1 && percent <= 100);
    }

    private Attempt<Placement> place(SignedIn who, UUID programme, Placement placement, Site site) {
        if (!site.open(placement.planned())) {
            return Attempt.refused(
                    Refusal.at("last", "refusal.placement.closed", site.name(), String.valueOf(site.closedOn())));
        }
        store.lock(programme);
        Optional<Placement> other = store.of(programme).stream()
                .filter(one -> one.traineeId().equals(placement.traineeId()))
                .filter(one -> one.overlaps(placement.first(), placement.planned()))
                .findFirst();
        if (other.isPresent()) {
            Placement met = other.get();
            return Attempt.refused(Refusal.at(
                    "first", "refusal.placement.overlap", name(met.siteId()), text(met.first()), text(met.last())));
        }
        store.insert(programme, placement, who.personId(), clock.instant());
        events.publishEvent(new PlacementChanged(
                "placement-recorded",
                who.personId(),
                programme,
                placement,
                site.code(),
                null,
                text(placement.first()) + " – " + text(placement.planned())));
        return Attempt.done(placement);
    }

    /**
     * Gives a placement an earlier last day.
     *
     * @param lastDay an ISO date from the day before its first, which says that it never began, to the day before its last
     * @return the placement as it is now, or why not, at the field {@code lastDay}
     * @throws NotFound for anyone who does not lead the programme, and for a placement of another
     */
    public Attempt<Placement> end(SignedIn who, UUID programmeId, UUID placementId, String lastDay) {
        require(who, programmeId);
        store.lock(programmeId);
        Placement found = find(programmeId, placementId);
        Optional<LocalDate> day = TypedDay.of(lastDay)
                .filter(one -> !one.isBefore(found.first().minusDays(1)) && one.isBefore(found.last()));
        if (day.isEmpty()) {
            return Attempt.refused(Refusal.at(
                    "lastDay",
                    "refusal.placement.end",
                    text(found.first().minusDays(1)),
                    text(found.last().minusDays(1))));
        }
        store.end(placementId, day.get(), who.personId(), clock.instant());
        events.publishEvent(new PlacementChanged(
                "placement-ended",
                who.personId(),
                programmeId,
                found,
                people.site(found.siteId()).map(Site::code).orElse(""),
                text(found.last()),
                text(day.get())));
        return Attempt.done(find(programmeId, placementId));
    }

    private Placement find(UUID programme, UUID placement) {
        return store.of(programme).stream()
                .filter(one -> one.id().equals(placement))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private String name(UUID site) {
        return people.site(site).map(Site::name).orElse("");
    }

    private static String text(LocalDate day) {
        return day.toString();
    }

    private static void require(SignedIn who, UUID programme) {
        if (!LedProgrammes.leads(who, programme)) {
            throw new NotFound();
        }
    }
}
