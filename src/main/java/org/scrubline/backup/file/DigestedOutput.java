package org.scrubline.backup.file;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;

/** Replaces the last 64 bytes written to it by the SHA-256, in hex, of all bytes before them. */
final class DigestedOutput extends FilterOutputStream {

    private final MessageDigest digest = Sha256.digest();
    private final HeldBackTail tail = new HeldBackTail(this::release);

    DigestedOutput(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        tail.push(bytes, offset, length);
    }

    /** To be called once, after the last byte; without it the digest is missing. */
    void finish() throws IOException {
        out.write(HexFormat.of().formatHex(digest.digest()).getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    private void release(byte[] bytes, int offset, int length) throws IOException {
        digest.update(bytes, offset, length);
        out.write(bytes, offset, length);
    }
}
