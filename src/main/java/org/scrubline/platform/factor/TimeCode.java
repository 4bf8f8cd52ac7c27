package org.scrubline.platform.factor;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Codes by time: RFC 6238 over RFC 4226, with HMAC-SHA-1, steps of 30 s counted from 1970 and six digits, which is what
 * every authenticator app takes.
 */
final class TimeCode {

    static final int DIGITS = 6;
    static final int SECRET_BYTES = 20;

    /** Steps a clock may be off either way (RFC 6238 section 5.2 advises one). */
    static final int SKEW = 1;

    private static final long STEP_SECONDS = 30;
    private static final String ALGORITHM = "HmacSHA1";

    private TimeCode() {}

    /** Number of the time step an instant falls into. */
    static long step(Instant at) {
        return Math.floorDiv(at.getEpochSecond(), STEP_SECONDS);
    }

    /** The code of a counter (RFC 4226 section 5.3); {@code digits} from 6 to 8. */
    static String of(byte[] secret, long counter, int digits) {
        byte[] hash =
                hash(secret, ByteBuffer.allocate(Long.BYTES).putLong(counter).array());
        int offset = hash[hash.length - 1] & 0xf;
        int number = ByteBuffer.wrap(hash).getInt(offset) & Integer.MAX_VALUE;
        int modulus = (int) Math.pow(10, digits);
        return ("%0" + digits + "d").formatted(number % modulus);
    }

    /** The step the code was made in, if it is one of the present step or its neighbours; the latest where several fit. */
    static OptionalLong matching(byte[] secret, String code, Instant now) {
        long present = step(now);
        return LongStream.rangeClosed(present - SKEW, present + SKEW)
                .filter(step -> same(of(secret, step, DIGITS), code))
                .max();
    }

    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] hash(byte[] secret, byte[] counter) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(secret, ALGORITHM));
            return mac.doFinal(counter);
        } catch (NoSuchAlgorithmException | InvalidKeyException e) {
            throw new IllegalStateException(ALGORITHM + " is part of every JDK", e);
        }
    }
}
