package org.scrubline.platform;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One page of a long list.
 *
 * @param lines those on this page, none only of an empty list
 * @param first place of the first of them in the whole list, from 1
 * @param all how many lines the whole list has
 * @param previous address of the page before, null on the first
 * @param next address of the page after, null on the last
 */
public record ListPage<T>(
        List<T> lines,
        int first,
        int all,
        @Nullable String previous,
        @Nullable String next) {

    /** Lines on a page. */
    public static final int LINES = 40;

    public ListPage {
        lines = List.copyOf(lines);
    }

    /**
     * The page of a list.
     *
     * @param page from 1; a page before the first or after the last is that one
     * @param path address of the list, without a question mark
     */
    public static <T> ListPage<T> of(List<T> whole, int page, String path) {
        int pages = Math.max(1, (whole.size() + LINES - 1) / LINES);
        int number = Math.min(Math.max(1, page), pages);
        int from = (number - 1) * LINES;
        return new ListPage<>(
                whole.subList(from, Math.min(whole.size(), from + LINES)),
                from + 1,
                whole.size(),
                number == 1 ? null : path + "?page=" + (number - 1),
                number == pages ? null : path + "?page=" + (number + 1));
    }

    /** The same page with its lines put into other words. */
    public <R> ListPage<R> map(Function<List<T>, List<R>> words) {
        return new ListPage<>(words.apply(lines), first, all, previous, next);
    }

    /** Place of the last line of this page in the whole list. */
    public int last() {
        return first + lines.size() - 1;
    }

    /** Whether there is another page. */
    public boolean several() {
        return previous != null || next != null;
    }
}
