package org.scrubline.archive.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

@Component
class ArchiveNavigation implements Navigation {

    @Override
    public List<NavItem> entries(SignedIn who) {
        return List.of(new NavItem("my-archive", "/my-archive", 95));
    }
}
