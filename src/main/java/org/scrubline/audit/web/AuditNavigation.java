package org.scrubline.audit.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Last in the row: who looked at one's own records, and for those who oversee a programme, what was done in it. */
@Component
class AuditNavigation implements Navigation {

    /** They have no records of their own here. */
    private static final Set<Role> GUESTS = Set.of(Role.VISITOR, Role.ANALYST);

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        if (who.has(Role.DIRECTOR) || who.has(Role.ADMINISTRATOR)) {
            entries.add(new NavItem("done", "/done", 80));
        }
        if (!who.grants().stream().map(SignedIn.Grant::role).allMatch(GUESTS::contains)) {
            entries.add(new NavItem("seen", "/seen", 90));
        }
        return entries;
    }
}
