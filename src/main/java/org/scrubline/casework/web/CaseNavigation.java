package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** The trainee's home; supervisors may log a case for a trainee. */
@Component
class CaseNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        if (who.has(Role.TRAINEE)) {
            return List.of(new NavItem("my-cases", "/my-cases", 10));
        }
        return who.has(Role.SUPERVISOR) ? List.of(new NavItem("log-case", "/cases/new", 15)) : List.of();
    }
}
