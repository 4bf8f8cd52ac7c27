package org.scrubline.look;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Finds words a reader would see or hear that stand in a template itself instead of a message file. */
final class WordsOnTheTemplate {

    private static final Pattern WORD = Pattern.compile("\\p{L}");
    private static final Pattern EXPRESSION = Pattern.compile("[#$*@~]\\{(?:[^{}]|\\{[^{}]*})*}");
    private static final Pattern LITERAL = Pattern.compile("'[^']*\\p{L}[^']*'|\\|[^|]*\\p{L}[^|]*\\|");
    private static final List<String> SAID = List.of("title", "aria-label", "aria-description", "placeholder", "alt");
    private static final List<String> REPLACED = List.of("th:text", "th:utext", "th:replace", "th:insert");
    private static final List<String> UNSEEN = List.of("script", "style");

    private final List<String> found = new ArrayList<>();

    private WordsOnTheTemplate() {}

    /** One line for each place. */
    static List<String> in(Templates.Template template) {
        WordsOnTheTemplate words = new WordsOnTheTemplate();
        words.walk(template.tree().getDocumentElement());
        return words.found.stream().map(line -> template.path() + ": " + line).toList();
    }

    private void walk(Element element) {
        attributes(element);
        if (UNSEEN.contains(element.getTagName()) || REPLACED.stream().anyMatch(element::hasAttribute)) {
            return;
        }
        NodeList children = element.getChildNodes();
        for (int i = 0; i < children.getLength(); i++) {
            Node child = children.item(i);
            if (child instanceof Element inner) {
                walk(inner);
            } else if (child.getNodeType() == Node.TEXT_NODE && hasWord(child.getNodeValue())) {
                found.add("text \"" + child.getNodeValue().strip() + "\" in <" + element.getTagName() + ">");
            }
        }
    }

    private void attributes(Element element) {
        NamedNodeMap attributes = element.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
            Attr attribute = (Attr) attributes.item(i);
            String name = attribute.getName();
            String value = attribute.getValue();
            boolean expressed = name.equals("th:text") || name.equals("th:utext") || SAID.contains(plain(name));
            boolean wrong = SAID.contains(name) ? hasWord(value) : expressed && hasLiteral(value);
            if (wrong) {
                found.add(name + "=\"" + value + "\" on <" + element.getTagName() + ">");
            }
        }
    }

    private static String plain(String name) {
        return name.startsWith("th:") ? name.substring(3) : "";
    }

    private static boolean hasWord(String text) {
        return WORD.matcher(text).find();
    }

    private static boolean hasLiteral(String expression) {
        String rest = EXPRESSION.matcher(expression).replaceAll("");
        return LITERAL.matcher(rest).find();
    }
}
