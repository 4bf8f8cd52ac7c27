package org.scrubline.platform.web;

import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.QrCode;

/**
 * The page of a person's own second factor.
 *
 * @param required whether a role of theirs asks for one
 * @param app the authenticator app; null when there is none
 * @param setUp what a new one is made of; null when there is one, or who it is must be shown first
 * @param passkeys whether there is a passkey, which is a second factor too
 * @param ask what to ask a passkey to show who it is; null when there is none, or no need
 */
record SecondFactorPage(
        boolean required, @Nullable AppLine app, @Nullable SetUp setUp, boolean passkeys, Passkeys.@Nullable Ask ask) {

    /** An app with the days it was added and last used at log-in, null until it is; {@code left} counts recovery codes. */
    record AppLine(String created, @Nullable String used, int left) {}

    /** A secret as a picture to read with the app, and as text to type. */
    record SetUp(QrCode picture, String secret) {}
}
