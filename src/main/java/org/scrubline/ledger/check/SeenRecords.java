package org.scrubline.ledger.check;

import java.util.UUID;

/** Which records had a leaf already: a set of ids in two arrays, 24 to 48 bytes an id. */
final class SeenRecords {

    private static final int START = 1 << 10;
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    private long[] high = new long[START];
    private long[] low = new long[START];
    private int count;

    /** False when the record had a leaf of this kind before. */
    boolean add(String kind, UUID record) {
        if (count * 3L > high.length * 2L) {
            grow();
        }
        long more = record.getMostSignificantBits() ^ (kind.hashCode() * SPREAD);
        boolean fresh = put(more, record.getLeastSignificantBits() | 1L << 63);
        if (fresh) {
            count++;
        }
        return fresh;
    }

    /** The top bit of the lower half is set in every id in use (RFC 9562 variant), so that a place with 0 is free. */
    private boolean put(long more, long less) {
        int place = slot(more, less);
        while (low[place] != 0) {
            if (low[place] == less && high[place] == more) {
                return false;
            }
            place = (place + 1) & (high.length - 1);
        }
        high[place] = more;
        low[place] = less;
        return true;
    }

    private int slot(long more, long less) {
        long mixed = (more ^ less) * SPREAD;
        return (int) (mixed >>> 32) & (high.length - 1);
    }

    private void grow() {
        long[] oldHigh = high;
        long[] oldLow = low;
        high = new long[oldHigh.length * 2];
        low = new long[oldLow.length * 2];
        for (int i = 0; i < oldLow.length; i++) {
            if (oldLow[i] != 0) {
                put(oldHigh[i], oldLow[i]);
            }
        }
    }
}
