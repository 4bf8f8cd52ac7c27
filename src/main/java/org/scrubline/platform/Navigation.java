package org.scrubline.platform;

import java.util.List;

/** A room's entries in the main navigation. */
public interface Navigation {

    List<NavItem> entries(SignedIn who);
}
