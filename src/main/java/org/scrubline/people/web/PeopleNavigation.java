package org.scrubline.people.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class PeopleNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        if (who.has(Role.VISITOR)) {
            entries.add(new NavItem("visits", "/visits", 12));
        }
        if (who.has(Role.TRAINEE)) {
            entries.add(new NavItem("my-answers", "/my-answers", 90));
        }
        if (who.has(Role.ADMINISTRATOR)) {
            entries.add(new NavItem("people", "/people", 60));
        }
        if (who.has(Role.DIRECTOR)) {
            entries.add(new NavItem("visitors", "/visitors", 65));
        }
        if (who.has(Role.ADMINISTRATOR) || who.has(Role.DIRECTOR)) {
            entries.add(new NavItem("settings", "/settings", 65));
        }
        return entries;
    }
}
