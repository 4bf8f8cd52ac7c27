package org.scrubline.platform.web;

import java.util.List;
import org.scrubline.platform.NavItem;

/**
 * What the frame of every page shows to a person who is logged in.
 *
 * @param personName printed name
 * @param roleName current roles in words
 * @param organisationName the organisation entered
 * @param nav main navigation in order
 * @param demo whether this server holds the invented demo programme
 * @param newDevice whether there was a log-in from a new kind of device that its owner has not called their own
 */
public record Shell(
        String personName,
        String roleName,
        String organisationName,
        List<NavItem> nav,
        boolean demo,
        boolean newDevice) {}
