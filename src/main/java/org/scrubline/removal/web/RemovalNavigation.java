package org.scrubline.removal.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class RemovalNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.DIRECTOR) || who.has(Role.ADMINISTRATOR)
                ? List.of(new NavItem("removals", "/removals", 86))
                : List.of();
    }
}
