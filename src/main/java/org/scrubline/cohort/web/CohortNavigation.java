package org.scrubline.cohort.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Directors and committee members start here; supervisors find how they score, analysts the groups. */
@Component
class CohortNavigation implements Navigation {

    private static final int ORDER = 10;
    private static final int SCORING_ORDER = 35;

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        if (who.has(Role.DIRECTOR) || who.has(Role.COMMITTEE_MEMBER)) {
            entries.add(new NavItem("cohort", "/cohort", ORDER));
        }
        if (who.has(Role.SUPERVISOR)) {
            entries.add(new NavItem("my-scoring", "/my-scoring", SCORING_ORDER));
        }
        if (who.has(Role.ANALYST)) {
            entries.add(new NavItem("equality", "/cohort/equality", ORDER));
        }
        return entries;
    }
}
