/** Plan text in documents: names may hold anything, so nothing of them may act. */

const entities: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text for XML and HTML, in content or in a quoted attribute. Characters that XML 1.0 does not allow are taken out
 * (W3C Recommendation, fifth edition, production 2).
 */
export function escapeXml(text: string): string {
  return text
    .replace(/[&<>"']/g, (c) => entities[c]!)
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '');
}
