package org.scrubline.platform;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import java.io.Serializable;
import java.util.Map;

/**
 * A square code a camera reads, as one path of an SVG picture.
 *
 * @param size width and height of the picture in modules, the quiet border of four included
 * @param path one horizontal stroke a run of dark modules
 */
public record QrCode(int size, String path) implements Serializable {

    private static final int BORDER = 4;

    public static QrCode of(String text) {
        try {
            BitMatrix modules =
                    new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, Map.of(EncodeHintType.MARGIN, BORDER));
            return new QrCode(modules.getWidth(), path(modules));
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static String path(BitMatrix modules) {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                int from = x;
                while (x < modules.getWidth() && modules.get(x, y)) {
                    x++;
                }
                if (x > from) {
                    path.append('M')
                            .append(from)
                            .append(' ')
                            .append(y)
                            .append('h')
                            .append(x - from)
                            .append("v1h")
                            .append(from - x)
                            .append('z');
                }
            }
        }
        return path.toString();
    }
}
