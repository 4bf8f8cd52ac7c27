package org.scrubline.backup.file;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Passes bytes on and measures them; closing it leaves the stream below open. */
final class MeasuredOutput extends FilterOutputStream {

    private final Measure measure = new Measure();

    MeasuredOutput(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        measure.add(bytes, offset, length);
        out.write(bytes, offset, length);
    }

    @Override
    public void close() throws IOException {
        out.flush();
    }

    Measure measure() {
        return measure;
    }
}
