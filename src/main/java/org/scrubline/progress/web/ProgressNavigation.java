package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Trainees find their own numbers here; directors come by way of the cohort. */
@Component
class ProgressNavigation implements Navigation {

    private static final int ORDER = 30;

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.TRAINEE) ? List.of(new NavItem("progress", "/progress", ORDER)) : List.of();
    }
}
