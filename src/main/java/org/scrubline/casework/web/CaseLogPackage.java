package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What a trainee's device keeps to log cases without a network, apart from the forms themselves. Holds no name of a person.
 *
 * @param scrubline always "case-log"
 * @param programmes the programmes this person trains in; empty for somebody who trains in none
 */
record CaseLogPackage(String scrubline, List<Log> programmes) {

    /**
     * One programme.
     *
     * @param shape hash of everything the form shows, so that it is fetched again only when that changed
     * @param zone zone of the programme
     * @param zones zone of each site's clock by the site's id
     * @param procedures title by code
     * @param rubrics id of the version whose steps are shown, by procedure code
     * @param bands what the complexity of a case means for this person
     * @param words message patterns by key, for what the device says by itself
     */
    record Log(
            UUID programme,
            String name,
            String shape,
            String zone,
            Map<String, String> zones,
            Map<String, String> procedures,
            Map<String, String> rubrics,
            Bands bands,
            Map<String, String> words) {}

    /**
     * The band of a case by the points of its factors.
     *
     * @param points by code of the factor
     * @param plain sentence for each sum of points, the last one for any higher sum
     * @param early the same for procedures this person is still new to
     * @param earlyProcedures codes of those procedures
     */
    record Bands(Map<String, Integer> points, List<String> plain, List<String> early, List<String> earlyProcedures) {}
}
