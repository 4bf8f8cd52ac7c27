package org.scrubline.outcome;

import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.CaseState;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Who may read and enter the outcome of a case, and which cases have one. */
@Component
class OutcomeAccess {

    private final Cases cases;
    private final Rubrics rubrics;
    private final People people;

    OutcomeAccess(Cases cases, Rubrics rubrics, People people) {
        this.cases = cases;
        this.rubrics = rubrics;
        this.people = people;
    }

    /**
     * A case whose outcome this person may read and enter.
     *
     * @throws NotFound for everyone else, and for a case without an outcome
     */
    SurgicalCase open(SignedIn who, UUID id) {
        SurgicalCase found = cases.get(id);
        if (!who.has(Role.ADMINISTRATOR, found.programmeId()) && !who.has(Role.DIRECTOR, found.programmeId())) {
            cases.open(who, id);
        }
        if (!judged(found)) {
            throw new NotFound();
        }
        return found;
    }

    private boolean judged(SurgicalCase one) {
        return one.state() == CaseState.ENDED
                && rubrics.current(performed(one)).rubric().family().judgedByOutcome();
    }

    /** The procedure it became, if it was converted. */
    static String performed(SurgicalCase one) {
        return Optional.ofNullable(one.convertedTo()).orElse(one.procedureCode());
    }

    /** The zone of the site's clock at the end of the case. */
    ZoneId zone(SurgicalCase one) {
        return Optional.ofNullable(one.endedZone())
                .orElseGet(() -> people.programme(one.programmeId()).zone());
    }
}
