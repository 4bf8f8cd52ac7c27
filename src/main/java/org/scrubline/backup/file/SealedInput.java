package org.scrubline.backup.file;

import java.io.IOException;
import java.io.InputStream;

/** Opens the chunks of a sealed file one after the other; hands out nothing of a chunk that does not open. */
final class SealedInput extends InputStream {

    private static final int SEALED = Seal.CHUNK + Seal.TAG;

    private final InputStream in;
    private final Seal seal;
    private byte[] next;
    private byte[] open = new byte[0];
    private int position;
    private long number;
    private boolean ended;

    SealedInput(InputStream in, Passphrase passphrase) throws IOException {
        this.in = in;
        this.seal = Seal.read(in, passphrase);
        this.next = in.readNBytes(SEALED);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        while (position == open.length) {
            if (ended) {
                return -1;
            }
            openNext();
        }
        int count = Math.min(length, open.length - position);
        System.arraycopy(open, position, bytes, offset, count);
        position += count;
        return count;
    }

    /** Whether a chunk is the last is known only by looking for another one. */
    private void openNext() throws IOException {
        byte[] current = next;
        next = in.readNBytes(SEALED);
        ended = next.length == 0;
        open = seal.decrypt(number, ended, current, current.length);
        position = 0;
        number++;
    }
}
