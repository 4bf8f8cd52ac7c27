package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Trainees find their own numbers here, both find the list; directors come by way of the cohort. */
@Component
class ProgressNavigation implements Navigation {

    private static final int LIST_ORDER = 13;
    private static final int ORDER = 30;

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        if (who.has(Role.SUPERVISOR) || who.has(Role.TRAINEE)) {
            entries.add(new NavItem("list", "/list", LIST_ORDER));
        }
        if (who.has(Role.TRAINEE)) {
            entries.add(new NavItem("progress", "/progress", ORDER));
        }
        return entries;
    }
}
