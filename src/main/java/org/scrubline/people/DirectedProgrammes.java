package org.scrubline.people;

import org.scrubline.ledger.WholeOrganisation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class DirectedProgrammes implements WholeOrganisation {

    private final People people;

    DirectedProgrammes(People people) {
        this.people = people;
    }

    @Override
    public boolean directedBy(SignedIn who) {
        return people.programmes().stream().allMatch(programme -> who.has(Role.DIRECTOR, programme.id()));
    }
}
