package org.scrubline.outcome.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Where outcomes are entered; committee members find the programme's numbers. */
@Component
class OutcomeNavigation implements Navigation {

    private static final int ORDER = 62;

    @Override
    public List<NavItem> entries(SignedIn who) {
        if (OutcomesController.ENTER.stream().anyMatch(who::has)) {
            return List.of(new NavItem("outcomes", "/outcomes", ORDER));
        }
        return who.has(Role.COMMITTEE_MEMBER)
                ? List.of(new NavItem("outcomes", "/outcomes/programme", ORDER))
                : List.of();
    }
}
