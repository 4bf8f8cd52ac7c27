package org.scrubline.platform.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Passkeys;

/**
 * The page of a person's own passkeys.
 *
 * @param recent whether keys may be added and removed now
 * @param ask what to ask a passkey to show who it is; null when there is none, or no need
 * @param offer what a new passkey is made for; null when none may be
 */
record SignInKeysPage(List<KeyLine> keys, boolean recent, Passkeys.@Nullable Ask ask, Passkeys.@Nullable Offer offer) {

    /** A key with the days it was added and last used; {@code used} is null until it is. */
    record KeyLine(
            UUID id, String label, String created, @Nullable String used) {}
}
