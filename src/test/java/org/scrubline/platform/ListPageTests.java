package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ListPageTests {

    private static final String PATH = "/signed";

    @Test
    void aShortListIsOnePage() {
        ListPage<Integer> page = ListPage.of(numbers(ListPage.LINES), 1, PATH);
        assertThat(page.lines()).hasSize(ListPage.LINES);
        assertThat(page.several()).isFalse();
        assertThat(ListPage.of(List.of(), 1, PATH).several()).isFalse();
    }

    @Test
    void everyLineIsOnOnePageInOrder() {
        List<Integer> whole = numbers(2 * ListPage.LINES + 7);
        List<Integer> read = IntStream.rangeClosed(1, 3)
                .mapToObj(page -> ListPage.of(whole, page, PATH).lines())
                .flatMap(List::stream)
                .toList();
        assertThat(read).isEqualTo(whole);
    }

    @Test
    void aPageLeadsToItsNeighboursAndSaysWhereItIs() {
        ListPage<Integer> middle = ListPage.of(numbers(2 * ListPage.LINES + 7), 2, PATH);
        assertThat(middle.previous()).isEqualTo("/signed?page=1");
        assertThat(middle.next()).isEqualTo("/signed?page=3");
        assertThat(middle.first()).isEqualTo(ListPage.LINES + 1);
        assertThat(middle.last()).isEqualTo(2 * ListPage.LINES);
        assertThat(middle.all()).isEqualTo(2 * ListPage.LINES + 7);
    }

    @Test
    void aPageThatIsNotThereIsTheNearestOne() {
        List<Integer> whole = numbers(ListPage.LINES + 1);
        assertThat(ListPage.of(whole, -3, PATH)).isEqualTo(ListPage.of(whole, 1, PATH));
        assertThat(ListPage.of(whole, Integer.MAX_VALUE, PATH)).isEqualTo(ListPage.of(whole, 2, PATH));
        assertThat(ListPage.of(whole, 2, PATH).next()).isNull();
    }

    private static List<Integer> numbers(int many) {
        return IntStream.range(0, many).boxed().toList();
    }
}
