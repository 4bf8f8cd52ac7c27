package org.scrubline.training.web;

import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** The list of trainees for those who guide them, for trainees their own record. */
@Component
class TrainingNavigation implements Navigation {

    private static final int ORDER = 61;

    @Override
    public List<NavItem> entries(SignedIn who) {
        boolean guides = Stream.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER, Role.ADMINISTRATOR, Role.SUPERVISOR)
                .anyMatch(who::has);
        return guides || who.has(Role.TRAINEE) ? List.of(new NavItem("training", "/training", ORDER)) : List.of();
    }
}
