package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** The trainee's home. */
@Component
class CaseNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.TRAINEE) ? List.of(new NavItem("my-cases", "/my-cases", 10)) : List.of();
    }
}
