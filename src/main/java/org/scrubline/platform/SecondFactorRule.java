package org.scrubline.platform;

/** Says who must show a second factor at log-in. Implemented where programmes and their settings are kept. */
public interface SecondFactorRule {

    /** Whether one of this person's roles asks for it; works in the scope of their organisation. */
    boolean required(SignedIn who);
}
