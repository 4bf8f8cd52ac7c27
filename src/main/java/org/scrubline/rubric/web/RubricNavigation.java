package org.scrubline.rubric.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Navigation;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Everyone in the organisation may read its rubrics. */
@Component
class RubricNavigation implements Navigation {

    /** Late in the list, so that a person's own work comes first. */
    private static final int ORDER = 800;

    @Override
    public List<NavItem> entries(SignedIn who) {
        return List.of(new NavItem("rubrics", "/rubrics", ORDER));
    }
}
