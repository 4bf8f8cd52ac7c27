package org.scrubline.platform;

/**
 * What the database knows about the sizes of its tables, on which its plans rest. It gathers that by itself from what is
 * committed; whoever writes much in one transaction asks for it on the way.
 */
public interface TableStatistics {

    /** Counts rows written by the transaction of the caller too. No other may gather them until it ends. */
    void gather();
}
