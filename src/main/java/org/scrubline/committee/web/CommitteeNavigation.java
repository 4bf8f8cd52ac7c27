package org.scrubline.committee.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** The committee's own pages, and for everyone concerned the decisions that concern them. */
@Component
class CommitteeNavigation implements Navigation {

    private static final int DECISIONS = 35;
    // Behind the page an administrator starts on.
    private static final int MEETINGS = 61;
    private static final int DUTIES = 62;
    private static final int OPEN_TO_VISITORS = 93;

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        boolean office = who.has(Role.DIRECTOR) || who.has(Role.ADMINISTRATOR);
        if (who.has(Role.TRAINEE)) {
            entries.add(new NavItem("decisions", "/decisions", DECISIONS));
        } else if (who.has(Role.VISITOR)) {
            entries.add(new NavItem("decisions-open", "/decisions", OPEN_TO_VISITORS));
        }
        if (office || who.has(Role.COMMITTEE_MEMBER)) {
            entries.add(new NavItem("meetings", "/meetings", MEETINGS));
        }
        if (office) {
            entries.add(new NavItem("decisions-due", "/decisions-due", DUTIES));
        }
        return entries;
    }
}
