package org.scrubline.backup.file;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;

/** Reads what {@link DigestedOutput} wrote and can tell, at the end, whether every byte is as it was. */
final class DigestedInput extends FilterInputStream {

    private final MessageDigest digest = Sha256.digest();
    private final HeldBackTail tail = new HeldBackTail(digest::update);

    DigestedInput(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int count = in.read(bytes, offset, length);
        if (count > 0) {
            tail.push(bytes, offset, count);
        }
        return count;
    }

    /** Skipping would leave bytes out of the digest. */
    @Override
    public long skip(long count) throws IOException {
        byte[] passed = new byte[(int) Math.min(count, 8192)];
        return Math.max(0, read(passed, 0, passed.length));
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** Reads to the end and compares. */
    boolean closesRight() throws IOException {
        transferTo(OutputStream.nullOutputStream());
        byte[] expected = HexFormat.of().formatHex(digest.digest()).getBytes(StandardCharsets.US_ASCII);
        return Arrays.equals(expected, tail.tail());
    }
}
