package org.scrubline.demo;

import java.util.HashMap;
import java.util.Map;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.people.Characteristics;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.SigningStatements;
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
    private final SigningStatements statements;
    private final Characteristics characteristics;

    DemoPeople(
            People people,
            Accounts accounts,
            Memberships memberships,
            SigningStatements statements,
            Characteristics characteristics) {
        this.characteristics = characteristics;
        this.people = people;
        this.accounts = accounts;
        this.memberships = memberships;
        this.statements = statements;
    }

    /** Works in the tenant scope of the new organisation. */
    Cast join() {
        String zone = DemoCast.ZONE.getId();
        Programme programme = people.addProgramme(DemoCast.PROGRAMME, zone).orThrow();
        Map<String, Site> sites = new HashMap<>();
        DemoCast.PLACES.forEach(place -> sites.put(
                place.code(), people.addSite(place.code(), place.name(), zone).orThrow()));
        Map<String, SignedIn> members = new HashMap<>();
        DemoCast.OTHERS.forEach(one -> members.put(one.username(), add(programme, one)));
        DemoCast.SUPERVISORS.forEach(one -> members.put(
                one.username(), add(programme, new DemoCast.Member(one.username(), one.name(), Role.SUPERVISOR))));
        DemoCast.TRAINEES.forEach(one -> members.put(
                one.username(), add(programme, new DemoCast.Member(one.username(), one.name(), Role.TRAINEE))));
        Cast cast = new Cast(programme, sites, members);
        declare(cast);
        return cast;
    }

    private SignedIn add(Programme programme, DemoCast.Member member) {
        People.NewPerson added = people.addPerson(programme.id(), member.name(), member.username(), member.role())
                .orThrow();
        accounts.setFirstPassword(added.accountId(), PASSWORD).orThrow();
        SignedIn joined =
                memberships.find(added.accountId(), TenantScope.require()).orElseThrow();
        statements.accept(joined);
        return joined;
    }

    private void declare(Cast cast) {
        people.declareConflict(
                cast.trainee(DemoCast.CONFLICT_TRAINEE).personId(),
                cast.supervisor(DemoCast.CONFLICT_SUPERVISOR).personId());
        DemoCast.TRAINEES.forEach(one -> characteristics
                .say(cast.trainee(one.id()), DemoCast.said(one.id()))
                .orThrow());
        DemoCast.TRAINEES.stream()
                .filter(one -> one.earlier() > 0)
                .forEach(one -> people.declarePriorExperience(
                        cast.trainee(one.id()).personId(), Procedures.TRAB_FORNIX, one.earlier()));
    }
}
