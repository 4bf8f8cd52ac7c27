package org.scrubline.notice.web;

import java.util.List;
import org.scrubline.notice.Reminders;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.stereotype.Component;

/** A supervisor's reminders with how many there are; no figure while there are none. */
@Component
class NoticeNavigation implements Navigation {

    private static final int ORDER = 12;

    private final Reminders reminders;

    NoticeNavigation(Reminders reminders) {
        this.reminders = reminders;
    }

    @Override
    public List<NavItem> entries(SignedIn who) {
        return who.has(Role.SUPERVISOR)
                ? List.of(new NavItem("reminders", "/reminders", figure(who), ORDER))
                : List.of();
    }

    /** A page about an error may be made outside every organisation, where nothing can be counted. */
    private String figure(SignedIn who) {
        int count = TenantScope.current().isEmpty()
                ? 0
                : reminders.of(who.personId()).size();
        return count == 0 ? "" : Integer.toString(count);
    }
}
