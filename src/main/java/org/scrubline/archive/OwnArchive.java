package org.scrubline.archive;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.scrubline.platform.SignedIn;

/** What an organisation keeps about the person who asks, and nobody else's. */
public interface OwnArchive {

    /** Every part with its number of rows, those without a row included. */
    List<Kept> kept(SignedIn who);

    /**
     * Writes a ZIP file: a page to read, {@code index.html}, and one table a part (RFC 4180, UTF-8), all of one instant.
     *
     * @param out is not closed
     * @throws IOException when it cannot be written to; nothing is recorded then
     */
    void write(SignedIn who, OutputStream out) throws IOException;

    /**
     * Rows of a part.
     *
     * @param part its name, which is also that of its file
     */
    record Kept(String part, int rows) {}
}
