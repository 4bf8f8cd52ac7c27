package org.scrubline.backup.file;

import java.io.IOException;
import java.util.Arrays;

/** Passes bytes on, always keeping back the last {@value #LENGTH}: room for a digest of everything before them. */
final class HeldBackTail {

    /** Characters of a SHA-256 in hex. */
    static final int LENGTH = 64;

    /** Takes bytes that are certainly not among the last. */
    interface Sink {
        void accept(byte[] bytes, int offset, int length) throws IOException;
    }

    private final Sink sink;
    private final byte[] tail = new byte[LENGTH];
    private int held;

    HeldBackTail(Sink sink) {
        this.sink = sink;
    }

    void push(byte[] bytes, int offset, int length) throws IOException {
        int released = Math.max(0, held + length - LENGTH);
        int fromTail = Math.min(held, released);
        sink.accept(tail, 0, fromTail);
        System.arraycopy(tail, fromTail, tail, 0, held - fromTail);
        held -= fromTail;
        int fromNew = released - fromTail;
        sink.accept(bytes, offset, fromNew);
        System.arraycopy(bytes, offset + fromNew, tail, held, length - fromNew);
        held += length - fromNew;
    }

    /** The bytes kept back: fewer than {@value #LENGTH} when no more were ever pushed. */
    byte[] tail() {
        return Arrays.copyOf(tail, held);
    }
}
