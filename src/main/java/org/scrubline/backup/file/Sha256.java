package org.scrubline.backup.file;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256, which every JDK has. */
final class Sha256 {

    private Sha256() {}

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every JDK", e);
        }
    }
}
