package org.scrubline.people;

/** What the first administrator enters. All texts as typed. */
public record FirstStartEntry(
        String token,
        String organisation,
        String programme,
        String siteCode,
        String siteName,
        String zone,
        String printedName,
        String username,
        String password) {}
