package org.scrubline.cohort.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Directors and committee members start here. */
@Component
class CohortNavigation implements Navigation {

    private static final int ORDER = 10;

    @Override
    public List<NavItem> entries(SignedIn who) {
        boolean leads = who.has(Role.DIRECTOR) || who.has(Role.COMMITTEE_MEMBER);
        return leads ? List.of(new NavItem("cohort", "/cohort", ORDER)) : List.of();
    }
}
