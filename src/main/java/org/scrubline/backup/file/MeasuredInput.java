package org.scrubline.backup.file;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Measures what is read; closing it leaves the zip open. */
final class MeasuredInput extends FilterInputStream {

    private final Measure measure = new Measure();

    MeasuredInput(InputStream in) {
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
            measure.add(bytes, offset, count);
        }
        return count;
    }

    @Override
    public void close() {
        // The zip goes on to the next entry.
    }

    Measure measure() {
        return measure;
    }
}
