package org.scrubline.backup.file;

import java.security.MessageDigest;
import java.util.HexFormat;

/** Counts lines and bytes of one entry and hashes them. A row is one line: line ends inside values are escaped. */
final class Measure {

    private final MessageDigest digest = Sha256.digest();
    private long rows;
    private long bytes;

    void add(byte[] buffer, int offset, int length) {
        digest.update(buffer, offset, length);
        bytes += length;
        for (int i = offset; i < offset + length; i++) {
            if (buffer[i] == '\n') {
                rows++;
            }
        }
    }

    /** To be asked once. */
    Result result() {
        return new Result(rows, bytes, HexFormat.of().formatHex(digest.digest()));
    }

    record Result(long rows, long bytes, String sha256) {

        boolean fits(Manifest.Part part) {
            return rows == part.rows() && bytes == part.bytes() && sha256.equals(part.sha256());
        }
    }
}
