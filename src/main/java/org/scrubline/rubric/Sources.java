package org.scrubline.rubric;

import java.util.Map;
import java.util.NoSuchElementException;

/** Readable citations by key; also says which statements rest on common practice, memory or this project alone. */
public record Sources(Map<String, String> citations) {

    /** Key of a statement that rests on common practice alone; what a measure has when it names nothing else. */
    public static final String COMMON_PRACTICE = "common-practice";

    public Sources {
        citations = Map.copyOf(citations);
    }

    /**
     * The citation behind a key.
     *
     * @throws NoSuchElementException when the key is unknown
     */
    public String citation(String key) {
        String citation = citations.get(key);
        if (citation == null) {
            throw new NoSuchElementException("No source " + key);
        }
        return citation;
    }

    public boolean knows(String key) {
        return citations.containsKey(key);
    }
}
