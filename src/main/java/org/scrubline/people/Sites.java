package org.scrubline.people;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The sites of the organisation, for its directors and administrators. A site is never taken away: its cases point to it.
 * It closes, and no case of a later day can be logged for it.
 */
@Service
@Transactional
public class Sites {

    private final People people;
    private final PlaceStore places;
    private final ApplicationEventPublisher events;

    Sites(People people, PlaceStore places, ApplicationEventPublisher events) {
        this.people = people;
        this.places = places;
        this.events = events;
    }

    /** All of them, by name. */
    @Transactional(readOnly = true)
    public List<Site> all() {
        return places.sites();
    }

    /** Adds one; the fields of a refusal are {@code code}, {@code name} and {@code zone}. */
    public Attempt<Site> add(SignedIn who, String code, String name, String zone) {
        require(who);
        return people.addSite(code, name, zone)
                .fold(site -> Attempt.done(told("site-added", site, null, site.name())), Attempt::refused);
    }

    /** Gives a site another name; records show its code and keep it. The field of a refusal is {@code newName}. */
    public Attempt<Site> rename(SignedIn who, UUID id, String name) {
        Site site = find(who, id);
        String tidy = FreeText.tidy(name);
        Optional<Refusal> unfit = tidy.isEmpty()
                ? Optional.of(Refusal.at("newName", "refusal.name.empty"))
                : FreeText.check("newName", tidy, StoredPeople.NAME_LENGTH);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        places.renameSite(id, tidy);
        return Attempt.done(told("site-renamed", site, site.name(), tidy));
    }

    /**
     * Sets the last day of a site, past or to come.
     *
     * @param lastDay an ISO date; empty opens the site again. The field of a refusal is {@code lastDay}
     */
    public Attempt<Site> close(SignedIn who, UUID id, String lastDay) {
        Site site = find(who, id);
        Optional<LocalDate> day = TypedDay.of(lastDay);
        if (day.isEmpty() && !lastDay.isBlank()) {
            return Attempt.refused(Refusal.at("lastDay", "refusal.day"));
        }
        places.closeSite(id, day.orElse(null));
        LocalDate before = site.closedOn();
        return Attempt.done(told(
                day.isEmpty() ? "site-opened" : "site-closed",
                site,
                before == null ? null : before.toString(),
                day.map(LocalDate::toString).orElse(null)));
    }

    private Site told(String action, Site site, @Nullable String before, @Nullable String after) {
        events.publishEvent(new SiteChanged(action, site, before, after));
        return places.site(site.id()).orElseThrow();
    }

    private Site find(SignedIn who, UUID id) {
        require(who);
        return places.site(id).orElseThrow(NotFound::new);
    }

    private static void require(SignedIn who) {
        if (!who.has(Role.DIRECTOR) && !who.has(Role.ADMINISTRATOR)) {
            throw new NotFound();
        }
    }
}
