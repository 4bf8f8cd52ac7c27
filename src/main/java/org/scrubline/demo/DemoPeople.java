package org.scrubline.demo;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
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

    DemoPeople(People people, Accounts accounts, Memberships memberships) {
        this.people = people;
        this.accounts = accounts;
        this.memberships = memberships;
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
        return new Cast(programme, sites, members);
    }

    private SignedIn add(Programme programme, String username, String name, Role role) {
        People.NewPerson added =
                people.addPerson(programme.id(), name, username, role).orThrow();
        accounts.setFirstPassword(added.accountId(), PASSWORD).orThrow();
        UUID tenant = TenantScope.require();
        return memberships.find(added.accountId(), tenant).orElseThrow();
    }
}
