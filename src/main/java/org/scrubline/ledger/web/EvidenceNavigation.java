package org.scrubline.ledger.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class EvidenceNavigation implements Navigation {

    private static final int ORDER = 50;

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.DIRECTOR) ? List.of(new NavItem("evidence", "/evidence", ORDER)) : List.of();
    }
}
