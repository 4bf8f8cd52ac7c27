package org.scrubline.rubric;

import java.util.Map;

/** Readable citations by key; also says which statements rest on common practice, memory or this project alone. */
public record Sources(Map<String, String> citations) {

    /** Key of a statement that rests on common practice alone; what a measure has when it names nothing else. */
    public static final String COMMON_PRACTICE = "common-practice";

    public Sources {
        citations = Map.copyOf(citations);
    }

    /** The citation behind a key; the key itself when this release does not know it, as in a version of long ago. */
    public String citation(String key) {
        return citations.getOrDefault(key, key);
    }

    public boolean knows(String key) {
        return citations.containsKey(key);
    }
}
