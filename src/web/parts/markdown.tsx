import { marked, type Token, type Tokens } from 'marked';
import type { ComponentChildren, VNode } from 'preact';
import type { Written } from './written.tsx';

/** Links lead to https addresses, or to another topic of the bank; anything else is shown as plain text. */
function linkTarget(href: string): string | undefined {
  const topic = href.match(/^([a-z0-9]+(?:-[a-z0-9]+)*)\.md$/);
  if (topic) return `#/lessons/${topic[1]}`;
  return /^https:\/\//.test(href) ? href : undefined;
}

/** What HTML writes in entities, the lexer leaves as they are in plain text. */
const plain = (text: string): string =>
  text.replace(
    /&(amp|lt|gt|quot|#39);/g,
    (_, name: string) => ({ amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" })[name] ?? '',
  );

function inline(tokens: readonly Token[] | undefined): ComponentChildren {
  return (tokens ?? []).map((token) => {
    switch (token.type) {
      case 'strong':
        return <strong>{inline(token.tokens)}</strong>;
      case 'em':
        return <em>{inline(token.tokens)}</em>;
      case 'codespan':
        return <code>{plain((token as Tokens.Codespan).text)}</code>;
      case 'br':
        return <br />;
      case 'link': {
        const target = linkTarget((token as Tokens.Link).href);
        const words = inline(token.tokens);
        if (!target) return words;
        return target.startsWith('#') ? (
          <a href={target}>{words}</a>
        ) : (
          <a href={target} rel="noreferrer noopener" target="_blank">
            {words}
          </a>
        );
      }
      default: {
        const { tokens: inner, text, raw } = token as Token & { tokens?: Token[]; text?: string };
        return inner ? inline(inner) : plain(text ?? raw);
      }
    }
  });
}

function block(token: Token): VNode | null {
  switch (token.type) {
    case 'paragraph':
    case 'text':
      return <p>{inline((token as Tokens.Paragraph).tokens)}</p>;
    case 'blockquote':
      return <div class="caution">{blocks((token as Tokens.Blockquote).tokens)}</div>;
    case 'list': {
      const { ordered, items } = token as Tokens.List;
      const entries = items.map((item) => (
        <li key={item.raw}>
          {item.loose
            ? blocks(item.tokens)
            : item.tokens.map((part) =>
                part.type === 'text' ? inline((part as Tokens.Text).tokens) : block(part),
              )}
        </li>
      ));
      return ordered ? <ol>{entries}</ol> : <ul>{entries}</ul>;
    }
    case 'table': {
      const { header, rows } = token as Tokens.Table;
      return (
        <div class="table">
          <table>
            <thead>
              <tr>
                {header.map((cell) => (
                  <th key={cell.text} scope="col">
                    {inline(cell.tokens)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.map(({ text }) => text).join('|')}>
                  {row.map((cell, at) => (
                    <td key={`${header[at]?.text} ${cell.text}`}>{inline(cell.tokens)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      );
    }
    case 'code':
      return <pre>{(token as Tokens.Code).text}</pre>;
    default:
      return null;
  }
}

const blocks = (tokens: readonly Token[]): ComponentChildren => tokens.map(block);

/** Markdown of a lesson as elements: what isn't one of the few known tokens never reaches the page, raw HTML least of all. */
export function Markdown({ text, lang }: { text: string } & Written) {
  const read = blocks(marked.lexer(text));
  return lang === undefined ? read : <div lang={lang}>{read}</div>;
}
