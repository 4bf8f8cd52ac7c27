package org.scrubline.demo;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
import org.scrubline.people.VisitorRequest;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Fills the organisation with its people and sites. */
@Component
@Profile("demo")
class DemoPeople {

    /** The one password of every demo account; it exists in the demo profile alone. */
    static final String PASSWORD = "norrvale demo only";

    private final People people;
    private final Accounts accounts;
    private final Memberships memberships;
    private final Visitors visitors;
    private final Clock clock;

    DemoPeople(People people, Accounts accounts, Memberships memberships, Visitors visitors, Clock clock) {
        this.people = people;
        this.accounts = accounts;
        this.memberships = memberships;
        this.visitors = visitors;
        this.clock = clock;
    }

    /** Who is there, by log-in name, and the sites by code. */
    record Cast(Programme programme, Map<String, Site> sites, Map<String, SignedIn> members) {

        SignedIn member(String username) {
            SignedIn member = members.get(username);
            if (member == null) {
                throw new IllegalStateException("nobody is called " + username);
            }
            return member;
        }

        Site site(String code) {
            Site site = sites.get(code);
            if (site == null) {
                throw new IllegalStateException("no site " + code);
            }
            return site;
        }
    }

    /** Works in the tenant scope of the new organisation. */
    Cast join() {
        Programme programme =
                people.addProgramme(DemoCast.PROGRAMME, DemoCast.ZONE).orThrow();
        Map<String, Site> sites = new HashMap<>();
        DemoCast.SITES.forEach((code, name) ->
                sites.put(code, people.addSite(code, name, DemoCast.ZONE).orThrow()));
        Map<String, SignedIn> members = new HashMap<>();
        DemoCast.OTHERS.forEach(member ->
                members.put(member.username(), add(programme, member.username(), member.name(), member.role())));
        DemoCast.SUPERVISORS.forEach(supervisor -> members.put(
                supervisor.username(), add(programme, supervisor.username(), supervisor.name(), Role.SUPERVISOR)));
        DemoCast.TRAINEES.forEach(trainee ->
                members.put(trainee.username(), add(programme, trainee.username(), trainee.name(), Role.TRAINEE)));
        Cast cast = new Cast(programme, sites, members);
        letVisitorIn(cast);
        return cast;
    }

    /** A visitor with a fortnight to read one trainee's records. */
    private void letVisitorIn(Cast cast) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), cast.programme().zone());
        VisitorRequest request = new VisitorRequest(
                cast.member("callavere").personId(),
                "Accreditation visit",
                List.of(cast.member("hallinor").personId()),
                List.of(),
                today,
                today.plusDays(13));
        visitors.give(cast.member("delmarr"), cast.programme().id(), request).orThrow();
    }

    private SignedIn add(Programme programme, String username, String name, Role role) {
        People.NewPerson added =
                people.addPerson(programme.id(), name, username, role).orThrow();
        accounts.setFirstPassword(added.accountId(), PASSWORD).orThrow();
        UUID tenant = TenantScope.require();
        return memberships.find(added.accountId(), tenant).orElseThrow();
    }
}
