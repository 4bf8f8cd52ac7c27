package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class SheetNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.SUPERVISOR) ? List.of(new NavItem("to-score", "/to-score", 10)) : List.of();
    }
}
