package org.scrubline.backup.file;

import java.io.IOException;
import java.io.OutputStream;

/** Writes the head and then every full chunk; {@link #finish} writes the last one. */
final class SealedOutput extends OutputStream {

    private final OutputStream out;
    private final Seal seal;
    private final byte[] chunk = new byte[Seal.CHUNK];
    private int filled;
    private long number;

    SealedOutput(OutputStream out, Seal seal) throws IOException {
        this.out = out;
        this.seal = seal;
        out.write(seal.head());
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        int from = offset;
        int left = length;
        while (left > 0) {
            if (filled == chunk.length) {
                put(false);
            }
            int taken = Math.min(left, chunk.length - filled);
            System.arraycopy(bytes, from, chunk, filled, taken);
            filled += taken;
            from += taken;
            left -= taken;
        }
    }

    /** The last chunk says that it is the last; a file without it does not open. */
    void finish() throws IOException {
        put(true);
        out.flush();
    }

    private void put(boolean last) throws IOException {
        out.write(seal.encrypt(number, last, chunk, filled));
        number++;
        filled = 0;
    }
}
