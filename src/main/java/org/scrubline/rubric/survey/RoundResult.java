package org.scrubline.rubric.survey;

import java.util.List;
import java.util.Map;

/**
 * What came of a closed round, without names.
 *
 * @param remarks by step code, sorted by their words so that their order says nothing of who wrote them; none with too few
 *     experts
 */
public record RoundResult(ContentValidity validity, Map<String, List<String>> remarks) {

    public RoundResult {
        remarks = Map.copyOf(remarks);
    }
}
