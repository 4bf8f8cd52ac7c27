package org.scrubline.platform;

/**
 * One entry of the main navigation.
 *
 * @param messageKey key of its label
 * @param href path of this server
 * @param order place; the lowest one a person may see is that person's home
 */
public record NavItem(String messageKey, String href, int order) {}
