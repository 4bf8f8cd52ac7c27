package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * People by their initials, so that a device need not keep their names. Where two have the same, as many further letters
 * of the surname as tell them apart; where the names are the same, a number.
 */
final class Initials {

    private static final Pattern TITLE = Pattern.compile("^(?:Dr|Prof)\\.?\\s+");
    private static final Pattern SPACE = Pattern.compile("\\s+");

    private Initials() {}

    /** The same choices with initials as their labels. */
    static List<Option> of(List<Option> people) {
        return people.stream()
                .map(person -> Option.of(person.value(), shortest(person, people)))
                .toList();
    }

    private static String shortest(Option person, List<Option> people) {
        int longest = person.label().length();
        for (int letters = 1; letters <= longest; letters++) {
            int taken = letters;
            Map<String, Long> counts = people.stream()
                    .map(other -> initials(other.label(), taken))
                    .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
            String label = initials(person.label(), letters);
            if (counts.getOrDefault(label, 0L) == 1) {
                return label;
            }
        }
        long before = people.stream()
                .takeWhile(other -> !other.value().equals(person.value()))
                .filter(other -> other.label().equals(person.label()))
                .count();
        return initials(person.label(), 1) + " " + (before + 1);
    }

    /** The first letter of each name; of the last one as many as asked for. */
    private static String initials(String printedName, int letters) {
        List<String> names = SPACE.splitAsStream(
                        TITLE.matcher(printedName.strip()).replaceFirst(""))
                .toList();
        int last = names.size() - 1;
        String given = names.subList(0, last).stream()
                .map(name -> start(name, 1) + ". ")
                .collect(Collectors.joining());
        return given + start(names.get(last), letters) + ".";
    }

    private static String start(String name, int letters) {
        int length = Math.min(letters, name.codePointCount(0, name.length()));
        return name.substring(0, name.offsetByCodePoints(0, length));
    }
}
