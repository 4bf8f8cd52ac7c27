package org.scrubline.platform.passkey;

import java.nio.ByteBuffer;
import java.util.UUID;
import org.scrubline.platform.Base64Url;

/** How an account is written into a passkey: the 16 bytes of its random id, which say nothing about the person. */
final class AccountHandle {

    private AccountHandle() {}

    static String of(UUID accountId) {
        return Base64Url.text(ByteBuffer.allocate(16)
                .putLong(accountId.getMostSignificantBits())
                .putLong(accountId.getLeastSignificantBits())
                .array());
    }
}
