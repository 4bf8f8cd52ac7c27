package org.scrubline.platform;

/**
 * One entry of the main navigation.
 *
 * @param key what a page names as its own entry; {@code nav.<key>} is the message key of the label
 * @param href path of this server
 * @param figure a small number beside the label; empty for none
 * @param order place; the lowest one a person may see is that person's home
 */
public record NavItem(String key, String href, String figure, int order) {

    public NavItem(String key, String href, int order) {
        this(key, href, "", order);
    }

    /** Message key of the label. */
    public String labelKey() {
        return "nav." + key;
    }
}
