package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class SignoffNavigation implements Navigation {

    private static final int ORDER = 20;
    private static final int CONTESTS = 25;
    private static final int DIRECTORS_ORDER = 55;

    @Override
    public List<NavItem> entries(SignedIn who) {
        List<NavItem> entries = new ArrayList<>();
        if (who.has(Role.SUPERVISOR)) {
            entries.add(new NavItem("to-countersign", "/to-countersign", ORDER - 2));
            entries.add(new NavItem("signed", "/signed", ORDER));
        }
        if (who.has(Role.TRAINEE)) {
            entries.add(new NavItem("feedback", "/feedback", ORDER));
        }
        if (Stream.of(Role.SUPERVISOR, Role.TRAINEE, Role.DIRECTOR, Role.COMMITTEE_MEMBER)
                .anyMatch(who::has)) {
            entries.add(new NavItem("contests", "/contests", CONTESTS));
        }
        if (who.has(Role.DIRECTOR)) {
            entries.add(new NavItem("open-signatures", "/open-signatures", DIRECTORS_ORDER));
        }
        return entries;
    }
}
